import { startPrintChecks } from './print-check.ts';
import { startGuide } from './start-guide.ts';

/** The page of a guide, which has full-scale sheets to check as well. */
startPrintChecks();
startGuide();
