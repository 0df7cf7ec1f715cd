import { createHash } from 'node:crypto';

/** SHA-256 of bytes or of a text in UTF-8, in hexadecimal. */
export function sha256(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** The first 20 hexadecimal digits (80 bits) of the SHA-256 of some parts, which are told apart by their lengths. */
export function contentHash(...parts: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256');
  for (const part of parts) {
    const bytes = typeof part === 'string' ? Buffer.from(part) : part;
    if (parts.length > 1) hash.update(`${bytes.length}:`);
    hash.update(bytes);
  }
  return hash.digest('hex').slice(0, 20);
}
