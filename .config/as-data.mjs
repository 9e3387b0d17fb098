import { readFile } from 'node:fs/promises';
import { build } from 'esbuild';

/**
 * Puts modules that are only data into a bundle as such, so that what the data stands beside stays out of it:
 * the pages of the rules without the rules, the grammar without its layout.
 */
export const asData = {
    name: 'as-data',
    setup({ onLoad }) {
        let pages;
        onLoad({ filter: /[\\/]server[\\/]all-pages\.ts$/ }, async ({ path }) => {
            pages ??= exportsOf(path);
            return { contents: JSON.stringify(await pages), loader: 'json' };
        });
        onLoad({ filter: /[\\/]language[\\/]generated[\\/]grammar\.ts$/ }, async ({ path }) => {
            const text = await readFile(path, 'utf8');
            return { contents: text.replace(/`\{[\s\S]*\}`/, compact), loader: 'ts' };
        });
    },
};

/** The grammar is JSON in a template literal. */
function compact(literal) {
    const json = JSON.stringify(JSON.parse(new Function(`return ${literal}`)()));
    return JSON.stringify(json);
}

async function exportsOf(path) {
    const { outputFiles } = await build({ entryPoints: [path], bundle: true, format: 'esm', platform: 'node', write: false });
    const { ...data } = await import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
    return data;
}
