import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';

/** Files in which a package says under what terms it may be passed on. */
const termsFile = /^(licen[cs]e|copying|notice|unlicense)/i;

/**
 * The notices that the licences of bundled packages ask to be passed on, as one text: each package of which something lies in
 * a bundle, with its version, its licence and the words of its licence files.
 *
 * @param {string[]} inputs files that went into the bundles, as esbuild's metafile names them
 * @param {string} root folder from which they are named
 * @throws for a package that neither names its licence nor has a file of it
 */
export async function noticesOf(inputs, root) {
    const parts = [];
    for (const folder of packagesOf(inputs)) {
        const full = path.join(root, folder);
        const { name, version, license, licenses, author, homepage, repository } = JSON.parse(
            await readFile(path.join(full, 'package.json'), 'utf8'),
        );
        const terms = license?.type ?? license ?? licenses?.map(({ type }) => type).join(' or ');
        const files = (await readdir(full, { withFileTypes: true })).filter(
            (entry) => entry.isFile() && termsFile.test(entry.name),
        );
        const texts = await Promise.all(files.map((file) => readFile(path.join(full, file.name), 'utf8')));
        if (terms === undefined && texts.length === 0)
            throw new Error(`Nothing says under which licence ${name} may be passed on.`);
        const by = typeof author === 'string' ? author : author?.name;
        const at = homepage ?? (typeof repository === 'string' ? repository : repository?.url);
        parts.push(
            [
                `${name} ${version}: ${terms ?? 'see below'}`,
                ...(at === undefined ? [] : [at]),
                ...(texts.length > 0 ? texts.map((text) => `\n${text.trim()}`) : [`by ${by ?? name}`]),
            ].join('\n'),
        );
    }
    const line = '-'.repeat(80);
    return `Packages of others that are part of Kerfbook, and their licences.\n\n${parts.map((part) => `${line}\n${part}\n`).join('\n')}`;
}

/** Folders of packages, the innermost one where a package lies in another. */
export function packagesOf(inputs) {
    const found = inputs.flatMap((input) => /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(input)?.[0] ?? []);
    return [...new Set(found)].sort();
}
