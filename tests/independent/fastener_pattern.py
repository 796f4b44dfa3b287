"""Independent figures for a screw pattern: a rigid body on springs in six degrees of freedom, solved as one linear system."""
import numpy as np


def rigid(points, load_at, force, moment):
    """points: (x, y, k). Returns the force of each screw on its support's side, equal to what it carries."""
    k = np.zeros((6, 6))
    maps = []
    for x, y, w in points:
        # displacement at (x, y, 0) of a body with translation u and small rotation r: u + r x p
        g = np.zeros((3, 6))
        g[:, :3] = np.eye(3)
        g[:, 3:] = np.array([[0, 0, -y], [0, 0, x], [y, -x, 0]])
        maps.append((g, w))
        k += w * g.T @ g
    f = np.zeros(6)
    f[:3] = force
    f[3:] = np.array(moment) + np.cross([load_at[0], load_at[1], 0.0], force)
    q = np.linalg.solve(k, f)
    return [w * g @ q for g, w in maps]


if __name__ == "__main__":
    points = [(0.010, 0.020, 1.0), (0.150, 0.010, 1.0), (0.140, 0.110, 2.0), (0.020, 0.095, 1.0), (0.080, 0.070, 0.5)]
    loads = rigid(points, (0.20, 0.05), (300.0, -450.0, 800.0), (5.0, -12.0, 20.0))
    for row in loads:
        print([f"{v:.9f}" for v in row], f"{np.hypot(row[0], row[1]):.9f}")
    w = np.array([p[2] for p in points])
    print("centre", w @ [p[0] for p in points] / w.sum(), w @ [p[1] for p in points] / w.sum())
