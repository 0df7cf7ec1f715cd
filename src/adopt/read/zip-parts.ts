import { inflateRawSync } from 'node:zlib';
import { Unreadable } from './old-guide.ts';

/** Entries, bytes of all of them unpacked, and bytes of one that is XML, which becomes a tree many times as large. */
const most = { entries: 4_000, bytes: 256 * 1024 * 1024, xmlBytes: 16 * 1024 * 1024 } as const;

/**
 * The parts of a zip that are XML, by name, as a word processor's file holds them. Every part is unpacked once and
 * measured while that is done, whatever the file claims, so that nothing that reads it afterwards can be flooded
 * (APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16). Throws `Unreadable`.
 */
export function xmlParts(bytes: Uint8Array): ReadonlyMap<string, string> {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts = new Map<string, string>();
  let left: number = most.bytes;
  for (const entry of entriesOf(file)) {
    const isXml = /\.(?:xml|rels)$/i.test(entry.name);
    const content = unpacked(entry, Math.min(left, isXml ? most.xmlBytes : left));
    left -= content.length;
    if (isXml) parts.set(entry.name, content.toString('utf8'));
  }
  return parts;
}

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly packed: Buffer;
}

function entriesOf(file: Buffer): readonly Entry[] {
  try {
    const end = file.lastIndexOf('PK\x05\x06', undefined, 'latin1');
    if (end < 0) throw new Unreadable('its end is missing, as of a file that was cut short');
    const count = file.readUInt16LE(end + 10);
    if (count > most.entries)
      throw new Unreadable(`it holds ${count} parts; ${most.entries} are read at most`);
    const entries: Entry[] = [];
    let at = file.readUInt32LE(end + 16);
    for (let left = count; left > 0; left -= 1) {
      if (file.toString('latin1', at, at + 4) !== 'PK\x01\x02')
        throw new Unreadable('its table of parts is damaged');
      if (file.readUInt16LE(at + 8) & 1)
        throw new Unreadable('it is locked with a password; save it without one');
      const [name, extra, comment] = [28, 30, 32].map((field) => file.readUInt16LE(at + field)) as [
        number,
        number,
        number,
      ];
      const start = file.readUInt32LE(at + 42);
      const content = start + 30 + file.readUInt16LE(start + 26) + file.readUInt16LE(start + 28);
      entries.push({
        name: file.toString('utf8', at + 46, at + 46 + name),
        method: file.readUInt16LE(at + 10),
        packed: file.subarray(content, content + file.readUInt32LE(at + 20)),
      });
      at += 46 + name + extra + comment;
    }
    return entries;
  } catch (error) {
    if (error instanceof RangeError) throw new Unreadable('its table of parts is damaged');
    throw error;
  }
}

function unpacked({ name, method, packed }: Entry, limit: number): Buffer {
  if (method !== 0 && method !== 8)
    throw new Unreadable(`its part ${name} is packed in a way that is not read`);
  const tooLarge = new Unreadable(`its part ${name} unpacks to more than a guide can hold`);
  if (method === 0) {
    if (packed.length > limit) throw tooLarge;
    return packed;
  }
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(1, limit) });
  } catch (error) {
    if (error instanceof RangeError) throw tooLarge;
    throw new Unreadable(`its part ${name} is damaged`);
  }
}
