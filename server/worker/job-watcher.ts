/** Told of each job that a worker works off. */
export interface JobWatcher {
    /** @param cancel gives the job up at its next stage */
    begun(title: string, cancel: () => void): WatchedJob;
}

export interface WatchedJob {
    /** The job has come to this stage of the plan. */
    stage(name: string): void;
    ended(): void;
}
