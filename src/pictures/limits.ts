/** The largest picture file that is read at all, in bytes. */
export const MAX_PICTURE_BYTES = 64 * 1024 * 1024;

/** The most pixels that are decoded: a 108-megapixel phone passes; three bytes each is what it may cost in memory. */
export const MAX_PIXELS = 128_000_000;

/** Seconds that one picture may take before it is given up. */
export const MAX_SECONDS = 60;

/** Widths for screens, in pixels: a phone, a tablet, and both again at twice the density. */
export const PAGE_WIDTHS: readonly number[] = [480, 800, 1200, 1600];

/** Width of the fallback for a browser that shows no WebP. */
export const FALLBACK_WIDTH = 1200;

/** Width for paper: 180 mm, the text width of A4, at about 200 dots per inch. */
export const PRINT_WIDTH = 1400;

/** The tallest that any size may become; taller pictures are narrowed in proportion. */
export const MAX_HEIGHT = 3200;

/** Bytes of a picture's largest screen size above which its author hears of it. */
export const PICTURE_BUDGET = 600_000;

/** Bytes of a drawing, after cleaning, above which its author hears of it. */
export const DRAWING_BUDGET = 200_000;

/** Bytes of all pictures of a page, each in its largest screen size. */
export const PAGE_BUDGET = 6_000_000;
