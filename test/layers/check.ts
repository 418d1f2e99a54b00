// `npm run check:layers`: lower folders never import higher ones, and the middle stays pure.
import { join } from 'node:path';
import { ROOT } from '../../src/desk/ready.mjs';
import { faultsOf, readSources } from './layers.ts';

const files = readSources(join(ROOT, 'src'));
const faults = faultsOf(files);
for (const fault of faults) console.error(fault);
if (faults.length > 0) process.exitCode = 1;
else console.log(`Layers: ${files.length} files, each using only what lies below it.`);
