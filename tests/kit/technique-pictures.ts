import { readdirSync, readFileSync } from 'node:fs';
import type { BenchView, BlankView, FrameView, LayerView, PieceView, SectionView } from '../../shared/view/bench-view';
import { memoryWorkshop } from './memory-workshop';

const root = new URL('../../', import.meta.url);
const read = (path: string): Buffer => readFileSync(new URL(path, root));

/** A technique of the manual: the recipe on its page, and the steps after which the piece is shown. */
export interface Technique {
    readonly picture: string;
    readonly page: string;
    readonly recipe: string;
    /** Of its steps the titles, as the film strip has them. */
    readonly after: readonly string[];
}

/** px */
const frame = { width: 250, gap: 18, board: 150, section: 44 };
const columns = 3;
const rowHeight = frame.board + frame.section + 84;
const ink = '#3a332b';

/**
 * A strip from the drawing to the finished piece as an SVG, from the same data as the bench view: above each piece as it lies there, below it a cut
 * through it with its heights drawn larger.
 */
export async function techniquePicture({ page, recipe, after }: Technique): Promise<string> {
    const { view, art } = await benchOf(page, recipe);
    const frames = after.map((title): [string, FrameView, string | undefined] => {
        const step = view.steps.find((each) => each.title === title);
        const shown = view.frames.find((each) => each.step === step?.index);
        if (step === undefined || shown === undefined)
            throw new Error(`${recipe} has no step “${title}”, but ${view.steps.map((each) => each.title).join(', ')}`);
        return [title, shown, step.blank];
    });
    const used = new Set<string>();
    const pieces = frames.map(([title, { pieces: all }, blank], index) => {
        const piece = all.find((each) => each.blank === blank && !each.gone) ?? all.find((each) => !each.gone)!;
        return [`${index + 1}. ${title}`, pieceIn(view, piece, index, used)] as const;
    });
    const cells = [...(art === undefined ? [] : [['The art', drawing(art)] as const]), ...pieces];
    const width = columns * (frame.width + frame.gap) + frame.gap;
    const height = Math.ceil(cells.length / columns) * rowHeight;
    const paths = [...used].map((id) => `<path id="${nameOf(id)}" fill-rule="evenodd" d="${view.paths[id]}"/>`);
    return [
        `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="sans-serif" font-size="15" fill="${ink}">`,
        `<rect width="${width}" height="${height}" fill="#faf8f4"/>`,
        `<defs>${paths.join('')}</defs>`,
        ...cells.map(([title, content], index) => cell(index, title, content)),
        '</svg>\n',
    ].join('\n');
}

/** The recipe of a page of the manual beside the sample workshop, as the bench view has it. */
async function benchOf(page: string, name: string): Promise<{ view: BenchView; art: Art | undefined }> {
    const text = read(`extension/docs/${page}.md`).toString('utf8');
    const block = [...text.matchAll(/^```kerf\n(.*?)^```/gms)]
        .map(([, body]) => body!)
        .find((body) => body.includes(`recipe ${name} `));
    if (block === undefined) throw new Error(`${page}.md has no recipe ${name}`);
    const files = readdirSync(new URL('samples/art/', root)).map((file) => [`art/${file}`, read(`samples/art/${file}`)] as const);
    const { workshop, open } = await memoryWorkshop(Object.fromEntries(files));
    const shop = await open(read('samples/workshop.kerf').toString('utf8'), 'workshop.kerf');
    const document = await open(block, `${name}.kerf`);
    const recipe = workshop.recipe(document, name);
    if (shop === undefined || recipe === undefined) throw new Error(`${name} cannot be read`);
    const setting = { uri: '', textVersion: 0, recipes: [] };
    const sent = await workshop.ask({ do: 'bench', recipe, setting, textFindings: [] });
    const frames = sent.frames.map(({ step, pieces }) => ({ step, pieces: pieces.map((each) => sent.pieces[each]!) }));
    const view = { ...sent, frames };
    const [first] = recipe.arts;
    const path = first?.path.value;
    return { view, art: path === undefined ? undefined : { path, bytes: read(`samples/${path}`) } };
}

interface Art {
    readonly path: string;
    readonly bytes: Buffer;
}

function cell(index: number, title: string, content: string): string {
    const x = frame.gap + (index % columns) * (frame.width + frame.gap);
    const y = 38 + Math.floor(index / columns) * rowHeight;
    return `<g transform="translate(${x} ${y})"><text y="-12">${escaped(title)}</text>${content}</g>`;
}

/** The file itself, on white paper. */
function drawing(art: Art): string {
    const type = art.path.endsWith('.svg') ? 'image/svg+xml' : 'image/png';
    return `<rect width="${frame.width}" height="${frame.board}" fill="#fff" stroke="#cfc8bd"/><image x="6" y="6" width="${frame.width - 12}" height="${frame.board - 12}" href="data:${type};base64,${art.bytes.toString('base64')}"/>`;
}

function pieceIn(view: BenchView, piece: PieceView, index: number, used: Set<string>): string {
    const blank = view.blanks.find(({ name }) => name === piece.blank)!;
    const scale = Math.min(frame.width / blank.width, frame.board / blank.height);
    const [left, top] = [(frame.width - blank.width * scale) / 2, (frame.board - blank.height * scale) / 2];
    const clip = `left-${index}`;
    if (piece.outline !== undefined) used.add(piece.outline);
    for (const { path } of piece.layers) used.add(path);
    const shape = piece.outline === undefined ? '' : `<clipPath id="${clip}"><use href="#${nameOf(piece.outline)}"/></clipPath>`;
    return [
        `<g transform="translate(${round(left)} ${round(top)}) scale(${round(scale)})">${shape}`,
        `<g${shape === '' ? '' : ` clip-path="url(#${clip})"`}>`,
        `<rect width="${blank.width}" height="${blank.height}" fill="${blank.colour}"/>`,
        ...piece.layers.map((layer) => layerOf(layer, scale)),
        piece.masked ? `<rect width="${blank.width}" height="${blank.height}" fill="#e9dcb4" fill-opacity="0.6"/>` : '',
        '</g></g>',
        section(piece.section, heightsOf(view, piece.blank), blank, left, scale),
        `<text x="0" y="${frame.board + frame.section + 28}" font-size="13" fill="#6b6257">${escaped(blank.label)}${statesOf(piece)}</text>`,
    ].join('');
}

function statesOf({ masked, sealed, finished, sanded }: PieceView): string {
    const states = [masked && 'masked', sanded && 'sanded', finished ? 'finished' : sealed && 'sealed'].filter(Boolean);
    return states.length === 0 ? '' : `: ${states.join(', ')}`;
}

function layerOf({ path, kind, colour, opacity, width = 0 }: LayerView, scale: number): string {
    const use = `<use href="#${nameOf(path)}"`;
    if (kind === 'cut') return `${use} fill="none" stroke="${colour}" stroke-width="${round(Math.max(width, 1.2 / scale))}"/>`;
    const isHole = /^#[0-9a-f]{6}00$/i.test(colour);
    const seam = kind === 'inlaid' ? ` stroke="#1a0d04" stroke-opacity="0.5" stroke-width="${round(0.6 / scale)}"` : '';
    return `${use} fill="${isHole ? '#faf8f4' : colour}" fill-opacity="${isHole ? 1 : round(opacity)}"${seam}/>`;
}

/** From the lowest floor, or a little below it, to the highest place that this blank ever has (mm). */
function heightsOf(view: BenchView, blank: string): { low: number; high: number } {
    const sections = view.frames.flatMap(({ pieces }) => pieces.filter((each) => each.blank === blank && !each.gone));
    const spans = sections.flatMap((each) => each.section.spans);
    const high = Math.max(...spans.map(({ top }) => top));
    const floor = Math.min(...spans.filter(({ kind }) => kind === 'wood').map(({ top }) => top), high);
    const low = Math.min(...spans.map(({ bottom }) => bottom));
    return { low: Math.max(low, floor - Math.max(0.25, 0.5 * (high - floor))), high: high + 0.05 };
}

function section(
    { spans }: SectionView,
    { low, high }: { low: number; high: number },
    { width }: BlankView,
    left: number,
    scale: number,
): string {
    if (spans.length === 0) return '';
    const up = frame.section / (high - low);
    const rects = spans
        .filter(({ top }) => top > low)
        .map(({ from, to, top, bottom, colour }) => {
            const y = frame.board + 10 + (high - top) * up;
            return `<rect x="${round(left + from * scale)}" y="${round(y)}" width="${round((to - from) * scale)}" height="${round((top - Math.max(bottom, low)) * up)}" fill="${colour}"/>`;
        });
    return `<g shape-rendering="crispEdges">${rects.join('')}<path d="M${round(left)} ${frame.board + 10 + frame.section}h${round(width * scale)}" stroke="${ink}" stroke-width="0.7" stroke-dasharray="4 3"/></g>`;
}

function nameOf(id: string): string {
    return `s${id.replaceAll(/[^\w-]/g, '')}`;
}

function round(value: number): number {
    return Math.round(value * 1000) / 1000;
}

function escaped(text: string): string {
    return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}
