import './vehicle/no-eval.ts';
import { keepOnGuide } from './vehicle/on-guide.ts';
import { keepOnSite } from './vehicle/on-site.ts';

globalThis.keepVehicleRecord = keepOnGuide;

const root = document.getElementById('vehicle_records');
if (root) keepOnSite(root);
