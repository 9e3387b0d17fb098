/**
 * `npm run docs [-- FOLDER]`: the manual as a site in dist/manual, with search. It opens from the disk as it does from a server, since all its links are
 * relative and nothing is fetched. Reading order and groups are those of extension/docs/README.md.
 */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import Eleventy from '@11ty/eleventy';
import MarkdownIt from 'markdown-it';
import { anchored, sectionsOf } from './docs/sections.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const source = 'extension/docs';
const target = path.relative(root, path.resolve(process.argv[2] ?? path.join(root, 'dist/manual')));
const read = (file) => readFileSync(path.join(root, file), 'utf8');
const parts = partsOf(read(`${source}/README.md`));

process.chdir(root);
rmSync(target, { recursive: true, force: true });
const site = new Eleventy(source, target, { quietMode: true, config: configure });
await site.write();

const pages = [{ slug: 'README', title: 'The manual' }, ...parts.flatMap((part) => part.pages)];
const sections = pages.flatMap(({ slug, title: page }) => {
    const tokens = new MarkdownIt({ html: true }).parse(read(`${source}/${slug}.md`), {});
    return sectionsOf(urlOf(slug), tokens).map((section) => ({ ...section, page }));
});
writeFileSync(path.join(target, 'sections.js'), `globalThis.sections = ${JSON.stringify(sections)};\n`);
process.stdout.write(`${target}/index.html: ${sections.length} sections to be searched\n`);

function configure(eleventy) {
    eleventy.addPassthroughCopy({
        [`${source}/pictures`]: 'pictures',
        '.config/docs/manual.css': 'manual.css',
        '.config/docs/search.js': 'search.js',
        'node_modules/minisearch/dist/umd/index.js': 'minisearch.js',
    });
    eleventy.addGlobalData('layout', 'page.liquid');
    eleventy.addGlobalData('parts', parts);
    eleventy.addGlobalData('eleventyComputed', {
        permalink: ({ page }) => urlOf(page.fileSlug || 'README'),
        title: ({ page }) => titleOf(readFileSync(page.inputPath, 'utf8')),
    });
    eleventy.amendLibrary('md', (markdown) => {
        markdown.core.ruler.push('pages', ({ tokens }) => {
            for (const { heading, id } of anchored(tokens)) heading.attrSet('id', id);
            for (const token of tokens.flatMap(({ children }) => children ?? []))
                if (token.type === 'link_open') token.attrSet('href', hrefOf(token.attrGet('href')));
        });
    });
    // Braces in an example are the example's own.
    eleventy.addGlobalData('templateEngineOverride', 'md');
    eleventy.setIncludesDirectory('../../.config/docs');
}

/** The groups of the index, with their pages in reading order. */
function partsOf(index) {
    return index
        .split(/^## /m)
        .slice(1)
        .map((part) => ({
            title: part.split('\n', 1)[0],
            pages: [...part.matchAll(/^(?:-|\d+\.) \[([^\]]+)\]\(([\w-]+)\.md\)/gm)].map(([, title, slug]) => ({
                title,
                slug,
                url: urlOf(slug),
            })),
        }));
}

function urlOf(slug) {
    return slug === 'README' ? 'index.html' : `${slug}.html`;
}

function hrefOf(href) {
    return href.replace(/^([\w-]+)\.md(?=#|$)/, (_, slug) => urlOf(slug));
}

function titleOf(markdown) {
    return /^# (.+)$/m.exec(markdown)?.[1] ?? '';
}
