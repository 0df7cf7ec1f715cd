/**
 * Whether an address would run code when a browser follows it. Browsers skip control characters and spaces
 * before a scheme, and tabs and line breaks within it (WHATWG URL Standard, "basic URL parser", steps 1 to 3).
 */
export function isUnsafeAddress(address: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that browsers skip.
  const read = address.replace(/^[\u0000-\u0020]+|[\t\r\n]/g, '');
  return /^(?:javascript|vbscript|data):/i.test(read);
}
