import { crc32, deflateRawSync } from 'node:zlib';

/** What a file for a word processor is made of, for tests: WordprocessingML (ECMA-376, part 1) in a zip (APPNOTE 6.3). */
export interface OfficeFile {
  /** The XML within `w:body`. */
  readonly body: string;
  readonly header?: string;
  readonly footer?: string;
  readonly footnotes?: readonly string[];
  readonly comments?: readonly string[];
  /** Pictures by the id of their relationship. */
  readonly pictures?: { readonly [id: string]: Uint8Array };
  /** Targets outside the file by the id of their relationship: `hyperlink` or `image`. */
  readonly outside?: { readonly [id: string]: readonly [kind: string, target: string] };
}

const names =
  'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" xmlns:wp="http://schemas.openxmlformats.org/drawingml/2006/wordprocessingDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" xmlns:pic="http://schemas.openxmlformats.org/drawingml/2006/picture" xmlns:v="urn:schemas-microsoft-com:vml"';
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

/** Text of XML. */
export function xmlText(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** A run of text, bold where it is asked for. */
export function run(text: string, bold = false): string {
  const format = bold ? '<w:rPr><w:b/></w:rPr>' : '';
  return `<w:r>${format}<w:t xml:space="preserve">${xmlText(text)}</w:t></w:r>`;
}

/** A paragraph of runs or of plain text, in a style, or as an item of the numbered (1) or dotted (2) list. */
export function p(
  content: string,
  {
    style,
    list,
    level = 0,
  }: { readonly style?: string; readonly list?: 1 | 2; readonly level?: number } = {},
): string {
  const named = style ? `<w:pStyle w:val="${style}"/>` : '';
  const numbered = list ? `<w:numPr><w:ilvl w:val="${level}"/><w:numId w:val="${list}"/></w:numPr>` : '';
  return `<w:p><w:pPr>${named}${numbered}</w:pPr>${content.startsWith('<') ? content : run(content)}</w:p>`;
}

/** A table of cells, each the XML of its paragraphs or plain text. */
export function table(rows: readonly (readonly string[])[]): string {
  const cell = (content: string) => `<w:tc>${content.startsWith('<w:p>') ? content : p(content)}</w:tc>`;
  return `<w:tbl>${rows.map((cells) => `<w:tr>${cells.map(cell).join('')}</w:tr>`).join('')}</w:tbl>`;
}

/** A picture in a run, by the id of its relationship. */
export function picture(id: string, alt: string, linked = false): string {
  const at = linked ? `r:link="${id}"` : `r:embed="${id}"`;
  return `<w:r><w:drawing><wp:inline><wp:extent cx="900000" cy="600000"/><wp:docPr id="1" name="Picture" descr="${alt}"/><a:graphic><a:graphicData uri="http://schemas.openxmlformats.org/drawingml/2006/picture"><pic:pic><pic:blipFill><a:blip ${at}/></pic:blipFill></pic:pic></a:graphicData></a:graphic></wp:inline></w:drawing></w:r>`;
}

/** The bytes of the file. */
export function officeFile(given: OfficeFile): Uint8Array {
  const part = (name: string, content: string) => `${head}<w:${name} ${names}>${content}</w:${name}>`;
  const noted = (name: string, one: string, texts: readonly string[]) =>
    part(name, texts.map((text, index) => `<w:${one} w:id="${index + 1}">${p(text)}</w:${one}>`).join(''));
  const extra: [name: string, kind: string, content: string | undefined][] = [
    ['header1', 'header', given.header && part('hdr', p(given.header))],
    ['footer1', 'footer', given.footer && part('ftr', p(given.footer))],
    ['footnotes', 'footnotes', given.footnotes && noted('footnotes', 'footnote', given.footnotes)],
    ['comments', 'comments', given.comments && noted('comments', 'comment', given.comments)],
  ];
  const extras = extra.flatMap(([name, kind, content]) => (content ? [{ name, kind, content }] : []));
  const pictures = Object.entries(given.pictures ?? {});
  const outside = Object.entries(given.outside ?? {});
  const related = [
    `<Relationship Id="rNumbers" Type="${relations}/numbering" Target="numbering.xml"/>`,
    ...extras.map(
      ({ name, kind }) => `<Relationship Id="r-${name}" Type="${relations}/${kind}" Target="${name}.xml"/>`,
    ),
    ...pictures.map(
      ([id]) => `<Relationship Id="${id}" Type="${relations}/image" Target="media/${id}.png"/>`,
    ),
    ...outside.map(
      ([id, [kind, target]]) =>
        `<Relationship Id="${id}" Type="${relations}/${kind}" Target="${xmlText(target)}" TargetMode="External"/>`,
    ),
  ];
  const package_ = 'http://schemas.openxmlformats.org/package/2006';
  const level = (format: string) =>
    [0, 1].map((at) => `<w:lvl w:ilvl="${at}"><w:numFmt w:val="${format}"/></w:lvl>`).join('');
  const word = 'application/vnd.openxmlformats-officedocument.wordprocessingml';
  return zip([
    [
      '[Content_Types].xml',
      `${head}<Types xmlns="${package_}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Default Extension="png" ContentType="image/png"/><Override PartName="/word/document.xml" ContentType="${word}.document.main+xml"/></Types>`,
    ],
    [
      '_rels/.rels',
      `${head}<Relationships xmlns="${package_}/relationships"><Relationship Id="r1" Type="${relations}/officeDocument" Target="word/document.xml"/></Relationships>`,
    ],
    ['word/document.xml', `${head}<w:document ${names}><w:body>${given.body}</w:body></w:document>`],
    [
      'word/numbering.xml',
      part(
        'numbering',
        `<w:abstractNum w:abstractNumId="1">${level('decimal')}</w:abstractNum><w:abstractNum w:abstractNumId="2">${level('bullet')}</w:abstractNum><w:num w:numId="1"><w:abstractNumId w:val="1"/></w:num><w:num w:numId="2"><w:abstractNumId w:val="2"/></w:num>`,
      ),
    ],
    [
      'word/_rels/document.xml.rels',
      `${head}<Relationships xmlns="${package_}/relationships">${related.join('')}</Relationships>`,
    ],
    ...extras.map(({ name, content }) => [`word/${name}.xml`, content] as const),
    ...pictures.map(([id, bytes]) => [`word/media/${id}.png`, bytes] as const),
  ]);
}

/** A zip of files, each deflated. */
export function zip(files: readonly (readonly [name: string, content: string | Uint8Array])[]): Uint8Array {
  const local: Buffer[] = [];
  const central: Buffer[] = [];
  let at = 0;
  for (const [name, content] of files) {
    const bytes = Buffer.from(content);
    const packed = deflateRawSync(bytes);
    const facts = Buffer.alloc(26);
    facts.writeUInt16LE(20, 0);
    facts.writeUInt16LE(8, 4);
    facts.writeUInt16LE(0x21, 8);
    facts.writeUInt32LE(crc32(bytes), 10);
    facts.writeUInt32LE(packed.length, 14);
    facts.writeUInt32LE(bytes.length, 18);
    facts.writeUInt16LE(Buffer.byteLength(name), 22);
    const entry = [Buffer.from('PK\x03\x04'), facts, Buffer.from(name), packed];
    const rest = Buffer.alloc(14);
    rest.writeUInt32LE(at, 10);
    central.push(Buffer.from('PK\x01\x02\x14\x00'), facts, rest, Buffer.from(name));
    local.push(...entry);
    at += entry.reduce((sum, one) => sum + one.length, 0);
  }
  const directory = Buffer.concat(central);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(files.length, 8);
  end.writeUInt16LE(files.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...local, directory, end]);
}
