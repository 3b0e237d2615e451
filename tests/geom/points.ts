import fc from 'fast-check';

export const at = (xM: number, yM: number) => ({ xM, yM });

const coordinate = fc.double({ min: -50, max: 50, noNaN: true }).map((value) => value + 0);

export const pointArbitrary = fc.record({ xM: coordinate, yM: coordinate });

export const polylineArbitrary = fc.array(pointArbitrary, { minLength: 1, maxLength: 12 });
