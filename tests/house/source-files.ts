import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

export interface SourceFile {
    /** From the root, with forward slashes. */
    readonly path: string;
    readonly text: string;
}

/** The TypeScript files that git knows or would take, in the given rooms. */
export function sourceFiles(...rooms: string[]): SourceFile[] {
    return filesOf(/\.tsx?$/, rooms);
}

/** The stock that comes along, and the samples. */
export function stockFiles(): SourceFile[] {
    return filesOf(/\.kerf$/, ['language/stock', 'samples']);
}

function filesOf(kind: RegExp, rooms: readonly string[]): SourceFile[] {
    const listed = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard', '--', ...rooms], {
        cwd: root,
        encoding: 'utf8',
    });
    return listed
        .split('\n')
        .filter((file) => kind.test(file))
        .flatMap((file) => {
            try {
                return [{ path: file, text: readFileSync(path.join(root, file), 'utf8') }];
            } catch {
                return []; // deleted but still in the index
            }
        });
}

/** What a file imports: modules by name, own files as paths from the root. */
export function importsOf(file: SourceFile): string[] {
    const found = [
        ...file.text.matchAll(
            /(?:^|\n)\s*(?:import|export)\b[^'"`;]*?from\s*'([^']+)'|import\(\s*'([^']+)'\s*\)|(?:^|\n)import\s+'([^']+)'/g,
        ),
    ];
    return found.map((match) => {
        const name = match[1] ?? match[2] ?? match[3] ?? '';
        return name.startsWith('.') ? path.posix.join(path.posix.dirname(file.path), name) : name;
    });
}
