/** The largest picture file that is read at all, in bytes. */
export const MAX_PICTURE_BYTES = 64 * 1024 * 1024;

/** The most pixels that are decoded: a 108-megapixel phone passes; three bytes each is what it may cost in memory. */
export const MAX_PIXELS = 128_000_000;

/** Seconds that one picture may take before it is given up. */
export const MAX_SECONDS = 60;

/** Widths for screens, in pixels: a phone, a tablet, and both again at twice the density. */
export const PAGE_WIDTHS: readonly number[] = [480, 800, 1200, 1600];

/**
 * Width for paper, and for a browser that shows no WebP: 78 mm, as a figure is printed (templates/styles/print.css), at
 * 260 dots per inch. From 200 to 300 is what print shops ask of a photograph (common practice, no source).
 */
export const PLAIN_WIDTH = 800;

/** The tallest that any size may become; taller pictures are narrowed in proportion. */
export const MAX_HEIGHT = 3200;

/** Bytes of a picture's largest screen size above which its author hears of it. */
export const PICTURE_BUDGET = 600_000;

/** Bytes of a drawing, after cleaning, above which its author hears of it. */
export const DRAWING_BUDGET = 200_000;

/** Bytes of all pictures of a page, each in its largest screen size. */
export const PAGE_BUDGET = 6_000_000;
