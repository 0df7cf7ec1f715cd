import { startGuide } from './guide/start-guide.ts';

/** The one file of a guide: it has no sheets beside it, so it carries nothing that checks them. */
startGuide();
