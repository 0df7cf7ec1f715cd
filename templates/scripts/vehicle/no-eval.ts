import { config } from 'zod/mini';

/** The policy of the pages lets no text be run as a script, so that even trying to would be a fault in the console. */
config({ jitless: true });
