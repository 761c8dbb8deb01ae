import type { Job } from '../../../../core/job/model/types.ts'

/** A job but for what every writing of it gives anew. */
export const saidBy = ({ edition: _n, history: _at, ...job }: Job): Omit<Job, 'edition' | 'history'> => job
