/** How findings can be printed. */
export const formats = ['text', 'json', 'sarif'] as const;
