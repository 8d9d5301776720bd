//! Interpolation between the rows of a table, on linear and on logarithmic paper.

/// Value at `x` on the straight line between rows (x, y) sorted by rising x; the end rows hold beyond the ends.
/// An empty table gives 0.
pub(crate) fn linear(rows: &[(f64, f64)], x: f64) -> f64 {
    let Some(&(first_x, first_y)) = rows.first() else {
        return 0.0;
    };
    if x <= first_x {
        return first_y;
    }
    for pair in rows.windows(2) {
        if let [(x0, y0), (x1, y1)] = *pair
            && x <= x1
        {
            return if x1 > x0 {
                y0 + (y1 - y0) * (x - x0) / (x1 - x0)
            } else {
                y1
            };
        }
    }
    rows.last().map_or(first_y, |row| row.1)
}

/// Value at `x` between rows (x, y), straight on doubly logarithmic paper. All x and y > 0 and x rising.
/// Beyond the ends y follows x to the power given for that end.
pub(crate) fn log_log(rows: &[(f64, f64)], x: f64, power_below: f64, power_above: f64) -> f64 {
    let (Some(&(first_x, first_y)), Some(&(last_x, last_y))) = (rows.first(), rows.last()) else {
        return 0.0;
    };
    if x <= first_x {
        return first_y * libm::pow(x / first_x, power_below);
    }
    if x >= last_x {
        return last_y * libm::pow(x / last_x, power_above);
    }
    for pair in rows.windows(2) {
        if let [(x0, y0), (x1, y1)] = *pair
            && x <= x1
        {
            return y0 * libm::pow(y1 / y0, libm::log(x / x0) / libm::log(x1 / x0));
        }
    }
    last_y
}
