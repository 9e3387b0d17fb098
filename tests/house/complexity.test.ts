import { describe, expect, it } from 'vitest';
import { sourceFiles } from './source-files';

interface Paths {
    readonly name: string;
    readonly line: number;
    readonly paths: number;
}

const { pathsOf } = (await import(new URL('../../.config/complexity.mjs', import.meta.url).href)) as {
    readonly pathsOf: (file: string, source: string) => Paths[];
};

describe('how many paths lead through a function', () => {
    it('counts what forks, each function for itself', () => {
        const source = `function a(x: number | undefined, y = 1) {
            if (x && y) return [1].map((z) => (z > 1 ? z : 0));
            for (const one of [x ?? 1]) switch (one) { case 1: case 2: return x?.toFixed(); default: }
            try { x ??= 2; } catch {}
        }`;
        expect(pathsOf('a.ts', source).map(({ name, line, paths }) => `${name} ${line} ${paths}`)).toEqual([
            // One; if, &&; for, ??, two cases; ??=, catch.
            'a 1 9',
            'a function without a name 2 2',
        ]);
    });

    it('are twenty at most', () => {
        const many = sourceFiles('shared', 'language', 'server', 'extension')
            .filter(({ path }) => !path.includes('/generated/') && !path.endsWith('.d.ts'))
            .flatMap(({ path, text }) => pathsOf(path, text).map((each) => ({ ...each, path })))
            .filter(({ paths }) => paths > 20);
        expect(many.map(({ path, line, name, paths }) => `${path}:${line} ${name}: ${paths}`)).toEqual([]);
    });
});
