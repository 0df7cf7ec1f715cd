/** The kit that one line of a packing list counts: one id, or several for a lot that the guide declares in parts. */
export function packedIds(key: string): readonly string[] {
  return key.split(/\s+/).filter((id) => id !== '');
}
