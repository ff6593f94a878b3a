import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { leastSquares } from "sagbook/numerics/least_squares.ts";
import {
  cholesky,
  invertSymmetric,
  type Matrix,
  multiply,
  solveSymmetric,
  transpose,
} from "sagbook/numerics/matrix.ts";
import { Random } from "sagbook/numerics/random.ts";

function near(left: Matrix, right: Matrix, tolerance: number): void {
  left.forEach((row, i) =>
    row.forEach((entry, j) =>
      ok(Math.abs(entry - right[i][j]) <= tolerance, `${i},${j}: ${entry}`)
    )
  );
}

const identity = (n: number): Matrix =>
  Array.from(
    { length: n },
    (_, i) => Array.from({ length: n }, (_, j) => i === j ? 1 : 0),
  );

function randomCovariance(n: number, random: Random): number[][] {
  const root = Array.from(
    { length: n },
    () => Array.from({ length: n + 2 }, () => random.normal()),
  );
  return multiply(root, transpose(root));
}

Deno.test("cholesky() gives a lower triangle whose square is the matrix", () => {
  const random = new Random(1);
  for (let n = 1; n <= 8; n++) {
    const covariance = randomCovariance(n, random);
    const factor = cholesky(covariance);
    factor.forEach((row, i) => ok(row.every((x, j) => j <= i || x === 0)));
    near(multiply(factor, transpose(factor)), covariance, 1e-13);
  }
  deepEqual(cholesky([[25, 15, -5], [15, 18, 0], [-5, 0, 11]]), [
    [5, 0, 0],
    [3, 3, 0],
    [-1, 1, 3],
  ]);
});

Deno.test("invertSymmetric() and solveSymmetric() undo the matrix", () => {
  const random = new Random(2);
  for (let n = 1; n <= 8; n++) {
    const covariance = randomCovariance(n, random);
    const inverse = invertSymmetric(covariance);
    near(multiply(covariance, inverse), identity(n), 1e-10);
    deepEqual(inverse, transpose(inverse));
    const x = Array.from({ length: n }, () => random.normal());
    const right = multiply(covariance, x.map((entry) => [entry]));
    const found = solveSymmetric(covariance, right.map(([entry]) => entry));
    near([found], [x], 1e-10);
  }
});

Deno.test("cholesky() refuses what is not positive definite, square or finite", () => {
  throws(() => cholesky([[1, 1], [1, 1]]), {
    name: "RangeError",
    message:
      "Cannot factor a matrix as it must be positive definite: current value of pivot 2 is 0",
  });
  throws(() => cholesky([[-1]]), RangeError);
  throws(() => cholesky([[1, 2]]), {
    name: "TypeError",
    message:
      "Cannot factor a matrix as it must be square: current value is 1 by 2",
  });
  throws(() => cholesky([[NaN]]), {
    name: "RangeError",
    message:
      "Cannot factor a matrix as every entry must be a finite number: current value is NaN",
  });
  throws(() => cholesky([[1, 0], [0]]), TypeError);
  throws(() => solveSymmetric([[1]], [1, 2]), {
    name: "TypeError",
    message:
      "Cannot solve equations as the right side must have 1 entries: current value is 2",
  });
  throws(() => multiply([[1, 2]], [[1, 2]]), TypeError);
});

Deno.test("leastSquares() fits exact data exactly and leaves residuals at right angles", () => {
  const random = new Random(3);
  const design = Array.from({ length: 20 }, (_, i) => [1, i, i * i]);
  const exact = leastSquares(
    design,
    design.map(([a, b, c]) => 2 * a - b + c / 4),
  );
  near([exact.coefficients], [[2, -1, 0.25]], 1e-12);
  equal(exact.dof, 17);
  const noisy = leastSquares(design, design.map(() => random.normal()));
  for (let k = 0; k < 3; k++) {
    const dot = noisy.residuals.reduce(
      (sum, e, i) => sum + e * design[i][k],
      0,
    );
    ok(Math.abs(dot) < 1e-10, `${dot}`);
  }
  near(
    multiply(multiply(transpose(design), design), noisy.inverseNormal),
    identity(3),
    1e-8,
  );
});

Deno.test("leastSquares() keeps digits that the normal equations lose", () => {
  // Läuchli's matrix: XᵀX is singular in double precision for e = 1e-9.
  const e = 1e-9;
  const fit = leastSquares([[1, 1], [e, 0], [0, e]], [2, e, e]);
  near([fit.coefficients], [[1, 1]], 1e-6);
  throws(() => cholesky([[1 + e * e, 1], [1, 1 + e * e]]), RangeError);
});

Deno.test("leastSquares() refuses columns it cannot tell apart, and too few rows", () => {
  throws(() => leastSquares([[1, 2], [2, 4], [3, 6]], [1, 2, 3]), {
    name: "RangeError",
    message:
      "Cannot fit by least squares as no column may be a combination of those before it: current value is column 2",
  });
  throws(() => leastSquares([[1, 2]], [1]), {
    name: "TypeError",
    message:
      "Cannot fit by least squares as there must be a full row of coefficients for each observation, and no fewer rows than columns: current value is 1 by 2 with 1 observations",
  });
  throws(() => leastSquares([[NaN]], [1]), RangeError);
});
