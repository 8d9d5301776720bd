//! Complex numbers and the dense solution of a handful of linear equations in them.
//!
//! A speaker network has a few nodes once its series branches are drawn together, so a dense elimination beats
//! anything cleverer, and a crate for it would cost more of the page than these lines.

use std::ops::{Add, Div, Mul, Neg, Sub};

/// A complex number.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Complex {
    pub(crate) re: f64,
    pub(crate) im: f64,
}

impl Complex {
    pub(crate) const ZERO: Self = Self { re: 0.0, im: 0.0 };
    pub(crate) const ONE: Self = Self { re: 1.0, im: 0.0 };

    pub(crate) const fn new(re: f64, im: f64) -> Self {
        Self { re, im }
    }
    /// |z|, without overflow for the numbers met here.
    pub(crate) fn size(self) -> f64 {
        libm::hypot(self.re, self.im)
    }
    /// |z|², cheaper than the size.
    pub(crate) fn square(self) -> f64 {
        self.re * self.re + self.im * self.im
    }
    pub(crate) fn is_finite(self) -> bool {
        self.re.is_finite() && self.im.is_finite()
    }
}

impl Add for Complex {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.re + other.re, self.im + other.im)
    }
}
impl Sub for Complex {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.re - other.re, self.im - other.im)
    }
}
impl Neg for Complex {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.re, -self.im)
    }
}
impl Mul for Complex {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        Self::new(
            self.re * other.re - self.im * other.im,
            self.re * other.im + self.im * other.re,
        )
    }
}
impl Mul<f64> for Complex {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.re * factor, self.im * factor)
    }
}
impl Div for Complex {
    type Output = Self;
    fn div(self, other: Self) -> Self {
        let square = other.square();
        Self::new(
            (self.re * other.re + self.im * other.im) / square,
            (self.im * other.re - self.re * other.im) / square,
        )
    }
}

/// Square equations with several right-hand sides, row after row in one list: `size` coefficients, then `sides` values.
pub(crate) struct Equations {
    size: usize,
    sides: usize,
    rows: Vec<Complex>,
}

impl Equations {
    pub(crate) fn new(size: usize, sides: usize) -> Self {
        Self {
            size,
            sides,
            rows: vec![Complex::ZERO; size * (size + sides)],
        }
    }
    /// Adds to a coefficient (`column` < size) or to a right-hand side (`column` = size + side). Out of range: nothing.
    pub(crate) fn add(&mut self, row: usize, column: usize, value: Complex) {
        let width = self.size + self.sides;
        if column < width
            && let Some(at) = self.rows.get_mut(row * width + column)
        {
            *at = *at + value;
        }
    }
    /// The unknowns, one list for each side: Gaussian elimination with the largest element of each column as pivot.
    /// `None` when a column has no pivot above 1e-13 of the largest coefficient: the equations do not settle it.
    pub(crate) fn solve(mut self) -> Option<Vec<Vec<Complex>>> {
        let (size, width) = (self.size, self.size + self.sides);
        let largest = self
            .rows
            .iter()
            .map(|value| value.square())
            .fold(0.0_f64, f64::max);
        let least = largest * 1e-26;
        for column in 0..size {
            let pivot = (column..size).max_by(|a, b| {
                let of = |row: &usize| {
                    self.rows
                        .get(row * width + column)
                        .map_or(0.0, |value| value.square())
                };
                of(a).total_cmp(&of(b))
            })?;
            if pivot != column {
                for at in 0..width {
                    self.rows.swap(pivot * width + at, column * width + at);
                }
            }
            let (above, below) = self.rows.split_at_mut((column + 1) * width);
            let head = above.get(column * width..)?;
            let lead = *head.get(column)?;
            if lead.square() <= least || !lead.is_finite() {
                return None;
            }
            for row in below.chunks_exact_mut(width) {
                let Some(&first) = row.get(column) else { continue };
                if first == Complex::ZERO {
                    continue;
                }
                let factor = first / lead;
                for (value, by) in row.iter_mut().zip(head).skip(column + 1) {
                    *value = *value - factor * *by;
                }
            }
        }
        let mut all = Vec::with_capacity(self.sides);
        for side in 0..self.sides {
            let mut unknowns = vec![Complex::ZERO; size];
            for row in (0..size).rev() {
                let line = self.rows.get(row * width..(row + 1) * width)?;
                let mut sum = *line.get(size + side)?;
                for (by, value) in line.iter().zip(&unknowns).take(size).skip(row + 1) {
                    sum = sum - *by * *value;
                }
                let found = sum / *line.get(row)?;
                if !found.is_finite() {
                    return None;
                }
                *unknowns.get_mut(row)? = found;
            }
            all.push(unknowns);
        }
        Some(all)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn solves_what_is_easily_put_in() {
        // 2x + i y = 1; x - y = i  →  x = (1 + i·i)/(2 + i) = 0; y = -i.
        let mut it = Equations::new(2, 1);
        it.add(0, 0, Complex::new(2.0, 0.0));
        it.add(0, 1, Complex::new(0.0, 1.0));
        it.add(1, 0, Complex::ONE);
        it.add(1, 1, -Complex::ONE);
        it.add(0, 2, Complex::ONE);
        it.add(1, 2, Complex::new(0.0, 1.0));
        let found = it.solve().unwrap_or_default();
        let (x, y) = (found[0][0], found[0][1]);
        assert!((x * 2.0 + Complex::new(0.0, 1.0) * y - Complex::ONE).size() < 1e-12);
        assert!((x - y - Complex::new(0.0, 1.0)).size() < 1e-12);
    }

    #[test]
    fn says_when_it_is_not_settled() {
        let mut it = Equations::new(2, 1);
        for (row, column) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
            it.add(row, column, Complex::ONE);
        }
        assert!(it.solve().is_none());
    }
}
