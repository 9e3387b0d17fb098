import type { ChildProcess } from 'node:child_process';
import { gone, startGit } from './run-git';

/** What `git cat-file --batch` says of an object: its head, and its contents unless they are more than was asked for. */
export interface GitObject {
    readonly head: string;
    readonly body?: Buffer;
}

interface Waiting {
    readonly most: number;
    readonly resolve: (object: GitObject) => void;
    readonly reject: (error: unknown) => void;
}

/** A reader that nobody asks for so long is ended, ms. */
const IDLE_MS = 3000;

/**
 * One `git cat-file --batch` for many objects: a process of its own for each of thousands of commits takes half a minute. It is started by
 * the first question and ends by itself when none has come for a while; it never keeps this process alive.
 */
export class ObjectReader {
    private child: ChildProcess | undefined;
    private readonly waiting: Waiting[] = [];
    private timer: NodeJS.Timeout | undefined;
    /** What has come and is not taken yet. */
    private come: Buffer[] = [];
    private length = 0;
    /** The object whose contents are coming: bytes still to come, its line end among them. */
    private open: { readonly head: string; readonly size: number; left: number } | undefined;

    constructor(private readonly folder: string) {}

    /** @param name as git names objects, without a line end; @param most bytes of its contents */
    read(name: string, most: number): Promise<GitObject> {
        return new Promise((resolve, reject) => {
            this.waiting.push({ most, resolve, reject });
            clearTimeout(this.timer);
            this.child ??= this.start();
            this.hold(true);
            this.child.stdin?.write(`${name}\n`);
        });
    }

    /** It ends once it has read all; whoever asks before that gets a new one. */
    private leave(): void {
        const child = this.child;
        this.child = undefined;
        child?.stdin?.end();
    }

    private start(): ChildProcess {
        const child = startGit(this.folder, ['cat-file', '--batch', '--follow-symlinks']);
        const end = (error: unknown): void => {
            if (this.child !== child) return;
            this.child = undefined;
            this.come = [];
            this.length = 0;
            this.open = undefined;
            for (const { reject } of this.waiting.splice(0)) reject(error);
        };
        child.on('error', (error) => end(gone(error)));
        child.on('close', () => end(gone(new Error('git cat-file has ended'))));
        // A git that ends before it has read everything is seen by its end.
        child.stdin?.on('error', () => {});
        child.stdout?.on('data', (bytes: Buffer) => {
            if (this.child === child) this.take(bytes);
        });
        return child;
    }

    private take(bytes: Buffer): void {
        this.come.push(bytes);
        this.length += bytes.length;
        while (this.length > 0 && (this.open === undefined ? this.takeHead() : this.takeBody()));
        if (this.waiting.length > 0) return;
        this.hold(false);
        this.timer = setTimeout(() => this.leave(), IDLE_MS);
        this.timer.unref();
    }

    /** Whether there was a whole one. */
    private takeHead(): boolean {
        const all = this.joined();
        const end = all.indexOf('\n');
        if (end < 0) return false;
        const head = all.toString('utf8', 0, end);
        this.keep(all.subarray(end + 1));
        // Everything but a missing or ambiguous name has contents, if only the name to which a link leads (BATCH OUTPUT).
        const size = /^(?:[0-9a-f]{40,64} [a-z]+|symlink|dangling|loop|notdir) (\d+)$/.exec(head)?.[1];
        if (size === undefined) this.waiting.shift()?.resolve({ head });
        else this.open = { head, size: Number(size), left: Number(size) + 1 };
        return true;
    }

    private takeBody(): boolean {
        const open = this.open!;
        const most = this.waiting[0]?.most ?? 0;
        if (open.size > most) {
            // Thrown away as it comes: it may be larger than the memory.
            const all = this.joined();
            const rest = all.subarray(Math.min(open.left, all.length));
            open.left -= all.length - rest.length;
            this.keep(rest);
            if (open.left > 0) return false;
            this.open = undefined;
            this.waiting.shift()?.resolve({ head: open.head });
            return true;
        }
        if (this.length < open.left) return false;
        const all = this.joined();
        this.open = undefined;
        this.keep(all.subarray(open.left));
        this.waiting.shift()?.resolve({ head: open.head, body: all.subarray(0, open.size) });
        return true;
    }

    private joined(): Buffer {
        const all = this.come.length === 1 ? this.come[0]! : Buffer.concat(this.come);
        this.come = [all];
        return all;
    }

    private keep(rest: Buffer): void {
        this.come = rest.length === 0 ? [] : [rest];
        this.length = rest.length;
    }

    /** Only a question that is open keeps this process alive. */
    private hold(open: boolean): void {
        const handles = [this.child, this.child?.stdin, this.child?.stdout] as ({ ref?(): void; unref?(): void } | undefined)[];
        for (const handle of handles)
            if (open) handle?.ref?.();
            else handle?.unref?.();
    }
}
