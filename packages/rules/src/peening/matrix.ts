/**
 * Inverse of a symmetric positive definite matrix by Cholesky, its rows and columns first scaled to a unit diagonal so
 * that parameters of very different size do not matter. Undefined when it is singular to working precision.
 */
export function inverse(matrix: number[][]): number[][] | undefined {
  const scale = matrix.map((row, i) => 1 / Math.sqrt(row[i]!));
  if (!scale.every((value) => Number.isFinite(value) && value > 0)) return undefined;
  const lower = cholesky(matrix.map((row, i) => row.map((value, j) => value * scale[i]! * scale[j]!)));
  if (lower === undefined) return undefined;
  const columns = scale.map((_, j) =>
    solve(
      lower,
      scale.map((_unit, i) => (i === j ? 1 : 0)),
    ),
  );
  return columns.map((column, j) => column.map((value, i) => value * scale[i]! * scale[j]!));
}

function cholesky(matrix: number[][]): number[][] | undefined {
  const lower = matrix.map((row) => row.map(() => 0));
  for (let i = 0; i < matrix.length; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let rest = matrix[i]![j]!;
      for (let k = 0; k < j; k += 1) rest -= lower[i]![k]! * lower[j]![k]!;
      if (i === j && rest < 1e-13) return undefined;
      lower[i]![j] = i === j ? Math.sqrt(rest) : rest / lower[j]![j]!;
    }
  }
  return lower;
}

function solve(lower: number[][], right: number[]): number[] {
  const result = [...right];
  for (let i = 0; i < result.length; i += 1) {
    for (let k = 0; k < i; k += 1) result[i]! -= lower[i]![k]! * result[k]!;
    result[i]! /= lower[i]![i]!;
  }
  for (let i = result.length - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < result.length; k += 1) result[i]! -= lower[k]![i]! * result[k]!;
    result[i]! /= lower[i]![i]!;
  }
  return result;
}
