/** Comma-separated values after RFC 4180; the first line is the heading. */
export function commaSeparated(lines: readonly (readonly string[])[]): string {
  return lines.map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
}

function cell(text: string): string {
  const plain = text.replaceAll('\u00a0', ' ');
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
