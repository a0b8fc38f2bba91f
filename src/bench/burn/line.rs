//! Least squares.

/// What fits best: a value for each column with its standard error, what is left, and how many degrees of freedom that has.
#[derive(Clone, PartialEq, Debug)]
pub struct Line {
    pub values: Vec<f64>,
    /// Zero where there is no freedom left to tell them.
    pub errors: Vec<f64>,
    /// The squares of what is left, added up.
    pub squares: f64,
    pub freedom: u32,
}

/// Of each column this much has to be its own, or the others make it up.
const OWN: f64 = 1e-12;

/// `y` as a sum of the columns, by orthogonal columns (Gram and Schmidt, each done twice). None where a column is made up
/// of the others, or there are more columns than numbers.
pub fn least_squares(columns: &[Vec<f64>], y: &[f64]) -> Option<Line> {
    let (rows, count) = (y.len(), columns.len());
    let freedom = rows.checked_sub(count)?;
    // After the numbers of each vector stands what it is made of, in columns.
    let mut basis: Vec<Vec<f64>> = Vec::new();
    for (place, column) in columns.iter().enumerate() {
        let mut vector = column.clone();
        vector.resize(rows, 0.0);
        vector.extend((0..count).map(|other| if other == place { 1.0 } else { 0.0 }));
        let whole = length(rows, &vector);
        project_out(rows, &basis, &mut vector);
        let own = length(rows, &vector);
        if own.is_nan() || own <= OWN * whole {
            return None;
        }
        vector.iter_mut().for_each(|x| *x /= own);
        basis.push(vector);
    }
    let mut rest = y.to_vec();
    rest.resize(rows + count, 0.0);
    project_out(rows, &basis, &mut rest);
    let squares = dot(rows, &rest, &rest);
    let variance = if freedom > 0 { squares / freedom as f64 } else { 0.0 };
    let error = |place: usize| {
        let own = basis.iter().filter_map(|vector| vector.get(rows + place));
        (variance * own.map(|x| x * x).sum::<f64>()).sqrt()
    };
    Some(Line {
        values: rest.iter().skip(rows).map(|x| -x).collect(),
        errors: (0..count).map(error).collect(),
        squares,
        freedom: u32::try_from(freedom).ok()?,
    })
}

fn project_out(rows: usize, basis: &[Vec<f64>], vector: &mut [f64]) {
    for _ in 0..2 {
        for unit in basis {
            let by = dot(rows, unit, vector);
            vector.iter_mut().zip(unit).for_each(|(x, u)| *x -= by * u);
        }
    }
}

fn dot(rows: usize, a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).take(rows).map(|(a, b)| a * b).sum()
}

fn length(rows: usize, a: &[f64]) -> f64 {
    dot(rows, a, a).sqrt()
}
