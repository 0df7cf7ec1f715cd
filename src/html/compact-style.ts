/**
 * A style sheet without its comments and the blanks that nothing needs, as CSS Syntax Level 3 has it: texts in
 * quotes stay as they are, and a blank stays wherever it may part two words or join two selectors.
 */
export function compactStyle(style: string): string {
  const parts =
    style.match(/"(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*'|\/\*[\s\S]*?(?:\*\/|$)|[^"'/]+|[\s\S]/g) ?? [];
  return parts
    .filter((part) => !part.startsWith('/*'))
    .map((part) =>
      /^["']/.test(part)
        ? part
        : part
            .replace(/\s+/g, ' ')
            .replace(/ ?([{};,]) ?/g, '$1')
            .replace(/: /g, ':')
            .replace(/;}/g, '}'),
    )
    .join('')
    .trim();
}
