import sharp from 'sharp';

/** A picture in which no turn and no mirroring looks like another: sixteen-pixel blocks, each of its own colour. */
export const upright = { width: 96, height: 64, data: blocks(96, 64) };

function blocks(width: number, height: number): Buffer {
  const data = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const [column, row] = [x >> 4, y >> 4];
      data.set([column * 40, row * 60, (column * row * 37) % 200], (y * width + x) * 3);
    }
  }
  return data;
}

/**
 * Where stored row 0 and column 0 lie on the upright picture, by EXIF orientation
 * (CIPA DC-008 / EXIF 2.32, tag 274; the same table as TIFF 6.0, page 36).
 */
const orientations: Readonly<Record<number, readonly [row0: string, column0: string]>> = {
  1: ['top', 'left'],
  2: ['top', 'right'],
  3: ['bottom', 'right'],
  4: ['bottom', 'left'],
  5: ['left', 'top'],
  6: ['right', 'top'],
  7: ['right', 'bottom'],
  8: ['left', 'bottom'],
};

/** The upright picture as a camera would store it under an orientation, pixel by pixel from the standard's table. */
export async function storedAs(orientation: number, format: 'jpeg' | 'png'): Promise<Buffer> {
  const [row0 = '', column0 = ''] = orientations[orientation] ?? [];
  const { width, height } = upright;
  const turned = row0 === 'left' || row0 === 'right';
  const [columns, rows] = turned ? [height, width] : [width, height];
  const data = Buffer.alloc(columns * rows * 3);
  const along = (edge: string, index: number, length: number) =>
    edge === 'left' || edge === 'top' ? index : length - 1 - index;
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const x = turned ? along(row0, row, width) : along(column0, column, width);
      const y = turned ? along(column0, column, height) : along(row0, row, height);
      upright.data.copy(data, (row * columns + column) * 3, (y * width + x) * 3, (y * width + x) * 3 + 3);
    }
  }
  const image = sharp(data, { raw: { width: columns, height: rows, channels: 3 } }).withMetadata({
    orientation,
  });
  return format === 'png'
    ? image.png().toBuffer()
    : image.jpeg({ quality: 100, chromaSubsampling: '4:4:4' }).toBuffer();
}

/** A phone's photo: camera, place, owner and caption in every kind of metadata, and a profile. */
export async function photoWithSecrets(): Promise<Buffer> {
  const { width, height, data } = upright;
  const photo = await sharp(data, { raw: { width, height, channels: 3 } })
    .jpeg()
    .withExif({
      IFD0: { Make: 'SecretCamera', Artist: 'SecretOwner' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 0/1',
        GPSLongitudeRef: 'E',
        GPSLongitude: '5/1 6/1 0/1',
      },
    })
    .withXmp(
      '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:dc="http://purl.org/dc/elements/1.1/" dc:creator="SecretOwner"/></rdf:RDF></x:xmpmeta>',
    )
    .withIccProfile('p3')
    .toBuffer();
  return Buffer.concat([photo.subarray(0, 2), iptcSegment('SecretCaption'), photo.subarray(2)]);
}

/** An APP13 segment that holds one IPTC dataset, 2:120 caption (IPTC-IIM 4.2). */
function iptcSegment(caption: string): Buffer {
  const dataset = Buffer.concat([Buffer.from([0x1c, 2, 120, 0, caption.length]), Buffer.from(caption)]);
  const padded = dataset.length % 2 ? Buffer.concat([dataset, Buffer.from([0])]) : dataset;
  const resource = Buffer.concat([
    Buffer.from('8BIM\x04\x04\0\0\0\0\0', 'latin1'),
    Buffer.from([dataset.length]),
    padded,
  ]);
  const body = Buffer.concat([Buffer.from('Photoshop 3.0\0', 'latin1'), resource]);
  const head = Buffer.from([0xff, 0xed, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

/** A photo-like picture of any size, the same on every run. */
export async function photo(width: number, height: number): Promise<Buffer> {
  const seed = Buffer.alloc(40 * 30 * 3, 0).map((_, index) => (index * 7919 + ((index * index) % 251)) % 256);
  return sharp(seed, { raw: { width: 40, height: 30, channels: 3 } })
    .resize(width, height, { fit: 'fill' })
    .jpeg()
    .toBuffer();
}
