import type { CarJob } from '../../../shared-core/views/job-sheet-view-schema.ts';

export type Task = CarJob['tasks'][number];
export type JobBlock = CarJob['blocks'][number];
export type JobStep = JobBlock['steps'][number];
export type Fluid = JobStep['fluids'][number];
export type Figure = JobStep['figures'][number];
export type Torque = JobStep['torques'][number];
export type Measure = NonNullable<JobStep['measure']>;
