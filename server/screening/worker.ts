/** The entry of a worker thread. */
import { Piscina } from 'piscina';
import { batchWorker } from './batch.ts';
import type { OutputSettings } from './output.ts';

export default batchWorker(Piscina.workerData as OutputSettings);
