/** Works anew only when something it is given is another thing than the time before. */
export function remembered<Given extends readonly unknown[], Found>(
  work: (...given: Given) => Found,
): (...given: Given) => Found {
  let last: { readonly given: Given; readonly found: Found } | null = null;
  return (...given) => {
    if (last === null || given.some((one, place) => one !== last?.given[place]))
      last = { given, found: work(...given) };
    return last.found;
  };
}
