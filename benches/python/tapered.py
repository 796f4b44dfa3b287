"""The tapered panel of `benches/panel.rs` by two general-purpose packages: static under 1 kPa and six natural frequencies, on one thread.

Arguments: the errors accepted, as shares, of the largest deflection and of the frequencies, which should be what the panel solver was
measured at; errors are those against tests/reference/tapered.csv. Of a sweep of meshes, those that take least for no more error are timed:

* scikit-fem's Argyris element on triangles graded to the corners of the cut-out, with or without the points, and on fewer points of
  integration; from making the mesh to the last frequency. One factorisation serves both.
* CalculiX's shells of eight nodes (S8R) on a graded grid; the wall time of ccx on a deck that was made before. The shells are 8 or 20
  times slimmer at the same stiffness and mass, since shells as thick as the panel shear, and differ by 1 % from a thin plate.

Neither tells its error; the panel solver's time holds its own estimate.
"""

import csv
import pathlib
import sys
import time

import numpy as np

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / 'tests/independent'))


def reference():
    with open(ROOT / 'crates/coaming-panel/tests/reference/tapered.csv') as file:
        return np.array([float(row['fine']) for row in csv.DictReader(file)])


def errors(largest, hertz, exact):
    """Shares that the deflection and the worst frequency are off by."""
    return abs(abs(largest) / exact[0] - 1), np.abs(hertz / exact[1:] - 1).max()


def compete(name, series, accepted):
    """Times the rivals of a sweep that take least: for errors no larger one by one, and for none larger than the larger of the two.

    A rival gives deflection, frequencies and seconds. Each series goes from coarse to fine and ends with the first that errs no more in
    either: the next would only take longer."""
    exact, tried = reference(), []
    for rivals in series:
        for words, rival in rivals:
            try:
                largest, hertz, seconds = rival()
            except np.linalg.LinAlgError as fault:
                # A mesh so graded that rounding makes an element singular; the series ends there.
                print(f'  {name}, {words}: {fault}', flush=True)
                break
            off = errors(largest, hertz, exact)
            print(f'  {name}, {words}: off by {100 * off[0]:.3f} % and {100 * off[1]:.3f} %, {seconds:.3f} s', flush=True)
            tried.append((seconds, words, rival, off))
            if off[0] <= accepted[0] and off[1] <= accepted[1]:
                break
    timed = {}
    for what, bounds in (('each error no larger', accepted), ('no error above the larger', [max(accepted)] * 2)):
        sound = [t for t in tried if t[3][0] <= bounds[0] and t[3][1] <= bounds[1]]
        if not sound:
            print(f'{name}, {what}: no mesh of the sweep errs so little')
            continue
        _, words, rival, off = min(sound, key=lambda t: t[0])
        if words not in timed:
            rival()
            timed[words] = sorted(rival()[2] for _ in range(15))
        seconds = timed[words]
        print(f'{name}, {what}, {words}: off by {100 * off[0]:.3f} % and {100 * off[1]:.3f} %, '
              f'{1e3 * seconds[7]:.1f} ms ({1e3 * seconds[0]:.1f} to {1e3 * seconds[-1]:.1f})', flush=True)


def triangles():
    from skfem import ElementTriArgyris

    import panel_tapered

    def run(levels, ratio, also_points, order):
        start = time.perf_counter()
        largest, hertz, _ = panel_tapered.plate(levels, ratio, also_points, ElementTriArgyris, order)
        return largest, hertz, time.perf_counter() - start

    def series(*rest):
        for levels in (1, 2, 3, 4, 5, 6):
            words = f'{levels} grades at {rest[0]}{" with points" if rest[1] else ""}, order {rest[2]}'
            yield words, lambda levels=levels: run(levels, *rest)

    run(0, 1.0, False, 4)
    for also_points in (False, True):
        for ratio in (0.5, 1.0):
            for order in (4, 5, 6):
                yield series(ratio, also_points, order)


def shells():
    import panel_tapered
    import shell_deck

    def run(text, marks):
        found, hertz, seconds = shell_deck.run(text, marks, panel_tapered.MODES)
        return found[0], hertz, seconds

    def series(power, slimmer):
        for size in (0.02, 0.015, 0.012, 0.01, 0.0085):
            deck = panel_tapered.shells(size, power, slimmer)
            yield f'{1e3 * size:g} mm to the power {power:g}, {slimmer} times slimmer', lambda deck=deck: run(*deck)

    for slimmer in (8, 20):
        for power in (1.5, 2.0):
            yield series(power, slimmer)


def main():
    accepted = [float(word) for word in sys.argv[1:3]]
    try:
        import skfem  # noqa: F401
    except ImportError:
        print('skipped: scikit-fem (not installed)')
        return
    compete('scikit-fem, Argyris', triangles(), accepted)
    import shell_deck

    if shell_deck.is_installed():
        compete('CalculiX, S8R', shells(), accepted)
    else:
        print('skipped: CalculiX (ccx is not installed, on Debian `apt-get install calculix-ccx`)')


if __name__ == '__main__':
    main()
