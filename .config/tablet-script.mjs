import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const entry = fileURLToPath(new URL('../extension/tablet/tablet.ts', import.meta.url));

/** The name by which the script of the page for the tablet is imported. */
export const tabletScriptName = 'tablet-script';

/** The script as it stands in the page, and its hash: a module for whoever makes pages. For browsers since 2022. */
export async function tabletScriptModule() {
    const { outputFiles, metafile } = await build({
        ...{ entryPoints: [entry], bundle: true, minify: true, write: false, metafile: true },
        ...{ format: 'iife', target: ['chrome100', 'safari16', 'firefox100'], charset: 'ascii' },
    });
    // Nothing in it may end the element that it stands in.
    const text = outputFiles[0].text.trim().replaceAll('</', '<\\/');
    const hash = `sha256-${createHash('sha256').update(text).digest('base64')}`;
    return { contents: `export default ${JSON.stringify({ text, hash })};`, files: Object.keys(metafile.inputs) };
}

/** For esbuild. */
export const tabletScript = {
    name: tabletScriptName,
    setup({ onLoad, onResolve }) {
        onResolve({ filter: /^tablet-script$/ }, ({ path }) => ({ path, namespace: tabletScriptName }));
        onLoad({ filter: /.*/, namespace: tabletScriptName }, async () => {
            const { contents, files } = await tabletScriptModule();
            return {
                contents,
                loader: 'js',
                watchFiles: files.map((file) => fileURLToPath(new URL(`../${file}`, import.meta.url))),
            };
        });
    },
};
