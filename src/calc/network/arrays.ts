/** Reads and writes that prove the index: a figure from beside the array must never pass for a number. */
export function real(values: Float64Array, index: number): number {
  const value = values[index];
  if (value === undefined) throw new RangeError(`index ${index} outside an array of ${values.length}`);
  return value;
}

export function whole(values: Int32Array, index: number): number {
  const value = values[index];
  if (value === undefined) throw new RangeError(`index ${index} outside an array of ${values.length}`);
  return value;
}

export function add(values: Float64Array, index: number, amount: number): void {
  values[index] = real(values, index) + amount;
}
