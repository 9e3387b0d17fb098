import type Mocha from 'mocha';

export interface TestResult {
    readonly title: string;
    readonly milliseconds: number;
    /** Absent when the test passed. */
    readonly error?: string;
    /** Why the first try failed; absent when there was no second. */
    readonly secondTry?: string;
}

export interface SuiteTime {
    readonly suite: string;
    /** From its first hook to its last. */
    readonly milliseconds: number;
}

export interface Results {
    readonly tests: readonly TestResult[];
    readonly times: readonly SuiteTime[];
}

/** Runs what has been loaded and gathers one result a test (and one a failing hook), and the time of each suite. */
export function runMocha(mocha: Mocha, tell?: (result: TestResult) => void): Promise<Results> {
    const tests: TestResult[] = [];
    const times: SuiteTime[] = [];
    const firstTries = new Map<string, string>();
    let begun = 0;
    const isOutermost = (suite: Mocha.Suite) => suite.parent?.root === true;
    const add = (test: Mocha.Runnable, error?: Error) => {
        const title = test.fullTitle();
        const secondTry = firstTries.get(title);
        const result = {
            title,
            milliseconds: test.duration ?? 0,
            ...(error === undefined ? {} : { error: error.stack ?? String(error) }),
            ...(secondTry === undefined ? {} : { secondTry }),
        };
        tests.push(result);
        tell?.(result);
    };
    return new Promise((resolve) => {
        mocha
            .run(() => resolve({ tests, times }))
            .on('suite', (suite) => {
                if (isOutermost(suite)) begun = Date.now();
            })
            .on('suite end', (suite) => {
                if (isOutermost(suite)) times.push({ suite: suite.title, milliseconds: Date.now() - begun });
            })
            .on('retry', (test, error) => firstTries.set(test.fullTitle(), error.message))
            .on('pass', (test) => add(test))
            .on('fail', (test, error) => add(test, error));
    });
}

export function describeResult({ title, milliseconds, error, secondTry }: TestResult): string {
    const tries = secondTry === undefined ? '' : ', second try';
    const head = `${error === undefined ? 'ok    ' : 'FAILED'} ${title} (${milliseconds} ms${tries})`;
    return error === undefined ? `${head}\n` : `${head}\n${error.replace(/^/gm, '       ')}\n`;
}

/** What there is to say after everything has run; its last line counts the tests. */
export function describeAll({ tests, times }: Results): string {
    const failed = tests.filter(({ error }) => error !== undefined);
    const again = tests.filter(({ secondTry }) => secondTry !== undefined);
    const slowest = times.toSorted((a, b) => b.milliseconds - a.milliseconds).slice(0, 8);
    return [
        'The longest suites:',
        ...slowest.map(({ suite, milliseconds }) => `  ${(milliseconds / 1000).toFixed(0).padStart(4)} s  ${suite}`),
        ...(again.length === 0 ? [] : ['Needed a second try:']),
        ...again.map(({ title, secondTry }) => `  ${title}: ${describeWait(secondTry ?? '')}`),
        ...(failed.length === 0 ? [] : ['Failed:']),
        ...failed.map(({ title }) => `  ${title}`),
        `${tests.length - failed.length} passed, ${failed.length} failed`,
        '',
    ].join('\n');
}

/** What was said first and, where an element was waited for in vain, which: the first line alone names only the time. */
function describeWait(message: string): string {
    const [first = '', ...rest] = message.split('\n');
    const waited = rest.find((line) => line.includes('waiting for'));
    return waited === undefined ? first : `${first} ${waited.trim()}`;
}
