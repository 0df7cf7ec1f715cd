/** Frame headers, which tell the size: SOF0 to SOF15 without DHT, JPG and DAC (ITU-T T.81, table B.1). */
const isFrame = (marker: number) =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

/** The size of a JPEG picture in pixels, from its frame header (ITU-T T.81, B.2.2); `null` where it is none. */
export function jpegSize(bytes: Uint8Array): { readonly width: number; readonly height: number } | null {
  const at = (index: number) => bytes[index] ?? -1;
  const word = (index: number) => at(index) * 256 + at(index + 1);
  if (word(0) !== 0xffd8) return null;
  let place = 2;
  while (place + 8 < bytes.length) {
    if (at(place) !== 0xff) return null;
    const marker = at(place + 1);
    if (isFrame(marker)) {
      const [height, width] = [word(place + 5), word(place + 7)];
      return width > 0 && height > 0 ? { width, height } : null;
    }
    // Fill bytes stand before any marker (B.1.1.2); the scan, or the end, comes after the frame.
    if (marker === 0xff) place += 1;
    else if (marker === 0xda || marker === 0xd9) return null;
    else place += 2 + Math.max(2, word(place + 2));
  }
  return null;
}
