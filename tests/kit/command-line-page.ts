import { codesOf, formsOf, whatOf, written } from '../../server/cli/usage/help';
import { usages } from '../../server/cli/usage/usages';

/** The manual's page of the command line, made from what the commands themselves read. */
export function commandLinePage(): string {
    const list = usages.map(({ name, brief }) => `| [\`${name}\`](#${name}) | ${brief} |`);
    return [
        '# The command line',
        '',
        '<!-- Made from server/cli/usage/usages.ts by `npm run commands`; what is written here by hand is lost. -->',
        '',
        'In the editor’s terminals `kerfbook` is there once the extension is installed. Elsewhere, install its package (`npm install ./kerfbook-VERSION.tgz`)',
        'and write `npx kerfbook`; inside this project `npx kerfbook` is enough.',
        'Without a file, every recipe below this folder is taken. `kerfbook COMMAND --help` tells what stands here, `kerfbook --version` which',
        'Kerfbook it is. Nothing is fetched from anywhere, and nothing outside this folder and the files named is read.',
        '',
        '| command | |',
        '| --- | --- |',
        ...list,
        '',
        ...usages.flatMap((usage) => {
            const options = Object.entries(usage.options);
            return [
                `## ${usage.name}`,
                '',
                '```sh',
                ...formsOf(usage),
                '```',
                '',
                ...usage.more.flatMap((paragraph) => [inTable(paragraph), '']),
                ...(options.length === 0 ? [] : ['| option | |', '| --- | --- |']),
                ...options.map(([name, option]) => `| \`${written(name, option)}\` | ${inTable(whatOf(option))} |`),
                ...(options.length === 0 ? [] : ['']),
                '```sh',
                ...usage.examples.map(({ line, what }) => `${line}   # ${what}`),
                '```',
                '',
                `Exit code: ${codesOf(usage).join('; ')}.`,
                '',
            ];
        }),
        '## What goes wrong',
        '',
        'Each complaint is one line on standard error and says what to do. Where the fault is ours, `KERFBOOK_TRACE=yes` shows where it happened.',
        'No colours are written, so that `NO_COLOR` has nothing to switch off.',
        '',
    ].join('\n');
}

function inTable(text: string): string {
    return text.replaceAll('|', '\\|').replace(/(^|\s)(--?[a-z-]*)(?=[\s,.;]|$)/g, '$1`$2`');
}
