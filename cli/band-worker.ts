/** A thread that makes its share of a band. */
import { parentPort, workerData } from 'node:worker_threads';
import type { Band } from '../engine/simulate/index.ts';
import { type BandJob, doBand } from './band-job.ts';

export type BandNews = { readonly done: number } | { readonly band: Band };

const tell = (news: BandNews): void => parentPort!.postMessage(news);

tell({ band: await doBand(workerData as BandJob, (done) => tell({ done })) });
