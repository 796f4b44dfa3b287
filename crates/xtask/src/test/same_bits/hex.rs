//! Numbers to the bit, as C and Python read them: `0x1.8p+1`.

/// The number as a hexadecimal float.
pub(super) fn hex(value: f64) -> String {
    let bits = value.to_bits();
    let sign = if bits >> 63 == 1 { "-" } else { "" };
    let exponent = (bits >> 52 & 0x7ff) as i32;
    let fraction = bits & 0x000f_ffff_ffff_ffff;
    match (exponent, fraction) {
        (0x7ff, 0) => format!("{sign}inf"),
        (0x7ff, _) => "nan".to_owned(),
        (0, 0) => format!("{sign}0x0p+0"),
        (0, _) => format!("{sign}0x0.{fraction:013x}p-1022"),
        _ => format!("{sign}0x1.{fraction:013x}p{:+}", exponent - 1023),
    }
}

#[cfg(test)]
mod tests {
    use super::hex;

    #[test]
    fn numbers_are_as_printf_gives_them() {
        // By the definition of C's %a: 3 = 1.5 * 2^1, 0.1 = 0x1.999999999999a * 2^-4.
        assert_eq!(hex(3.0), "0x1.8000000000000p+1");
        assert_eq!(hex(0.1), "0x1.999999999999ap-4");
        assert_eq!(hex(-0.0), "-0x0p+0");
        assert_eq!(hex(f64::from_bits(1)), "0x0.0000000000001p-1022");
        assert_eq!(hex(f64::MAX), "0x1.fffffffffffffp+1023");
    }
}
