import sharp from 'sharp';

/**
 * What cached picture work depends on besides the picture and the request. The number is raised whenever this
 * room would make other bytes from the same picture; another release of the encoders does so by itself.
 */
export const RECIPE = `2 sharp ${sharp.versions.sharp} vips ${sharp.versions.vips}`;
