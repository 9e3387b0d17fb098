import type { ArtFile, Job } from '../engine/jobs';

/** To the worker. Art goes over once for each version; jobs name it by its address. */
export type ToWorker =
    | { readonly kind: 'start'; readonly cancelled?: SharedArrayBuffer }
    | { readonly kind: 'art'; readonly file: ArtFile }
    /** What was worked out and read so far is not wanted any more. */
    | { readonly kind: 'forget' }
    | { readonly kind: 'job'; readonly id: number; readonly job: Job };

/** Back from it. */
export type FromWorker =
    | { readonly kind: 'progress'; readonly id: number; readonly part: number }
    | { readonly kind: 'answer'; readonly id: number; readonly answer: unknown }
    | { readonly kind: 'stage'; readonly id: number; readonly stage: string }
    | { readonly kind: 'cancelled'; readonly id: number }
    | { readonly kind: 'failed'; readonly id: number; readonly message: string };

/** A worker seen from either end; Node's and the browser's differ only in how they are made. */
export interface Port<In, Out> {
    post(message: Out): void;
    listen(receive: (message: In) => void): void;
    /** Ends the other side, which does not count as having died. Absent where it ends by itself. */
    end?(): void;
}
