/** Turns an offset in characters (code points) into one in UTF-16 units. */
export function unitsFromPoints(text: string, points: number): number {
  let units = 0;
  for (let left = points; left > 0 && units < text.length; left--) {
    units += text.codePointAt(units)! > 0xffff ? 2 : 1;
  }
  return units;
}

/** Turns an offset in UTF-16 units into one in characters (code points). */
export function pointsFromUnits(text: string, units: number): number {
  return [...text.slice(0, units)].length;
}
