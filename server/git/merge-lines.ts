import { runGit } from './run-git';

/** Three files on the disk, and what a merge of them shows in its markers. */
export interface LinesToMerge {
    readonly folder: string;
    readonly base: string;
    readonly ours: string;
    readonly theirs: string;
    readonly size: number;
    readonly names: { readonly ours: string; readonly theirs: string };
}

/** The files merged line by line, as git itself does it (git-merge-file(1)); undefined where they are no text. Nothing is written. */
export async function mergeLines({
    folder,
    base,
    ours,
    theirs,
    size,
    names,
}: LinesToMerge): Promise<{ bytes: Uint8Array; conflicts: number } | undefined> {
    const labels = [names.ours, 'base', names.theirs].flatMap((name) => ['-L', name]);
    const args = ['merge-file', '-p', '--quiet', `--marker-size=${size}`, ...labels, ours, base, theirs];
    const { code, out } = await runGit({ folder, args });
    // Above 127 it is no count of conflicts.
    return typeof code === 'number' && code >= 0 && code <= 127 ? { bytes: out, conflicts: code } : undefined;
}
