import { runtimePackages } from './runtime-packages.ts';

for (const { name, version, licence } of runtimePackages()) console.log(`${licence}\t${name}\t${version}`);
