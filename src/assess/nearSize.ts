/** Sizes of different series this near pass for one: 70 mm2 goes where 2/0 AWG, 67.4 mm2, does. Source: our choice. */
export const NEAR_SIZE = 1.05;
