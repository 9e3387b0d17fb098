import { spawn } from 'node:child_process';
import { realpathSync } from 'node:fs';
import path from 'node:path';
import { plainJson } from '../../../shared/review/one-line';
import { type Given, type Tool, takesFiles } from './tools';

/** What a tool says: what the command line says, as one text. */
export interface ToolAnswer {
    readonly text: string;
    readonly isError: boolean;
}

/** Nobody waits longer for an answer, ms. */
const PATIENCE = 120_000;

/** More than this no assistant can read, bytes. */
const MOST = 2_000_000;

/**
 * Asks the command line itself, in a process of its own: an answer is the same text, and what goes wrong there ends no server.
 * Texts of recipes, art and notes stand in it as JSON strings only.
 * @param cli the built command line
 */
export function answerTool(tool: Tool, given: Given, folder: string, cli: string, signal?: AbortSignal): Promise<ToolAnswer> {
    let asked: ReturnType<Tool['command']>;
    try {
        asked = tool.command(given);
        const [command = ''] = asked.args;
        if (takesFiles(command)) for (const file of asked.files) if (file !== '-') holdTo(folder, file);
        for (const as of asked.args.filter((each) => each.startsWith('--as='))) holdTo(folder, as.slice('--as='.length));
    } catch (error) {
        return Promise.resolve({ text: asText(error instanceof Error ? error.message : String(error)), isError: true });
    }
    return new Promise((resolve) => {
        const child = spawn(process.execPath, [cli, ...asked.args, '--', ...asked.files], {
            cwd: folder,
            env: { ...process.env, NO_COLOR: '1' },
            stdio: 'pipe',
            timeout: PATIENCE,
            ...(signal === undefined ? {} : { signal }),
        });
        let out = '';
        let err = '';
        child.stdout.setEncoding('utf8').on('data', (part: string) => {
            out += part;
            if (out.length > MOST) child.kill();
        });
        child.stderr.setEncoding('utf8').on('data', (part: string) => {
            if (err.length < MOST) err += part;
        });
        const end = (code: number | null): void => {
            if (out.length > MOST)
                resolve({ text: asText('The answer is too long: name fewer files, or one recipe.'), isError: true });
            else if (code === null) resolve({ text: asText('It took too long, or was given up.'), isError: true });
            else resolve({ text: bodyOf(out, err), isError: code > 1 });
        };
        child.on('error', () => end(null)).on('close', end);
        // Who does not read it closes it.
        child.stdin.on('error', () => undefined).end(asked.input ?? '');
    });
}

/** JSON as it is; other text as a JSON string, so that nothing in it can be taken for what the server itself says. */
function bodyOf(out: string, err: string): string {
    if (out === '') return asText(err.trim());
    try {
        JSON.parse(out);
        return out.replaceAll('<', '\\u003c');
    } catch {
        return asText(out);
    }
}

function asText(text: string): string {
    return plainJson({ text }).replaceAll('<', '\\u003c');
}

/** @throws where a name leads out of the folder, also by links */
function holdTo(folder: string, file: string): void {
    const within = path.resolve(folder, file);
    const real = realOf(within);
    const inside = (place: string): boolean => place === folder || place.startsWith(folder + path.sep);
    if (!inside(within) || !inside(real)) throw new Error(`${file} lies outside of the folder that was given.`);
}

/** Where a name leads; of what is not there, where its folder leads. */
function realOf(place: string): string {
    try {
        return realpathSync(place);
    } catch {
        const above = path.dirname(place);
        return above === place ? place : path.join(realOf(above), path.basename(place));
    }
}
