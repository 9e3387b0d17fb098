import type Mocha from 'mocha';

export interface TestResult {
    readonly title: string;
    readonly milliseconds: number;
    /** Absent when the test passed. */
    readonly error?: string;
}

/** Runs what has been loaded and gathers one result a test (and one a failing hook). */
export function runMocha(mocha: Mocha, tell?: (result: TestResult) => void): Promise<TestResult[]> {
    const results: TestResult[] = [];
    const add = (test: Mocha.Runnable, error?: Error) => {
        const result = {
            title: test.fullTitle(),
            milliseconds: test.duration ?? 0,
            ...(error === undefined ? {} : { error: error.stack ?? String(error) }),
        };
        results.push(result);
        tell?.(result);
    };
    return new Promise((resolve) => {
        mocha
            .run(() => resolve(results))
            .on('pass', (test) => add(test))
            .on('fail', (test, error) => add(test, error));
    });
}

export function describeResult({ title, milliseconds, error }: TestResult): string {
    const head = `${error === undefined ? 'ok    ' : 'FAILED'} ${title} (${milliseconds} ms)`;
    return error === undefined ? `${head}\n` : `${head}\n${error.replace(/^/gm, '       ')}\n`;
}
