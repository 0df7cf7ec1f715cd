import { offerRecord } from './bay/kept/offer-record.ts';
import { startPrintChecks } from './guide/print-check.ts';
import { startGuide } from './guide/start-guide.ts';

/** The page of a guide, which has full-scale sheets to check as well, and on which the record of a vehicle is kept. */
startPrintChecks();
const keeper = startGuide();
if (keeper) offerRecord(keeper);
