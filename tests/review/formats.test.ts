import MarkdownIt from 'markdown-it';
import { parse } from 'parse5';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ReviewAnswer } from '../../server/engine/jobs';
import { reviewMarkdown } from '../../shared/review/as-markdown';
import { reviewText } from '../../shared/review/as-text';
import { betterOrWorse } from '../../shared/review/better-or-worse';
import { reviewHtml } from '../../shared/review/html/as-html';
import { codeSpan, escapeMarkdown, spokenMarkdown } from '../../shared/review/markdown';
import { oneLine } from '../../shared/review/one-line';
import { flag, inlayRecipe } from '../kit/shop';
import { answer } from './review-kit';

const esc = String.fromCharCode(0x1b);
/** What somebody might write who wants more than to be read. */
const hostile = `<script>alert(1)</script><img src=x onerror=alert(2)> **loud** _low_ [here](https://evil.example) https://evil.example www.evil.example | cell @everyone # \`code\` ${esc}[31m \u202ereversed &lt; ]]>`;

function hostileRecipe(depth: string, words: string): string {
    const quoted = `"${words.replaceAll('"', '')}"`;
    return inlayRecipe({
        pocket: `art flag depth ${depth} air off allow thin-floor because ${quoted}`,
        after: `do ${quoted} for 5 min\n  wait 2 h ${quoted}`,
    }).replace('"Tray"', quoted);
}

let answers: ReviewAnswer[];
beforeAll(async () => {
    const art = { 'flag.svg': flag.replace('</svg>', '<rect x="30" y="20" width="5" height="4"/></svg>') };
    answers = [
        await answer({ text: hostileRecipe('0.5 mm', hostile) }, { text: hostileRecipe('0.6 mm', `${hostile} more`), art }, true),
    ];
});

interface Element {
    readonly nodeName: string;
    readonly value?: string;
    readonly attrs?: readonly { readonly name: string; readonly value: string }[];
    readonly childNodes?: readonly Element[];
}

function elements(node: Element): Element[] {
    return [node, ...(node.childNodes ?? []).flatMap(elements)];
}

describe('a review as a page', () => {
    let all: Element[];
    beforeAll(() => {
        all = elements(parse(reviewHtml(answers)) as unknown as Element);
    });

    it('holds no element but those of the page itself', () => {
        const names = new Set(all.map(({ nodeName }) => nodeName));
        const own =
            'html head body main meta title style article section h1 h2 h3 p table thead tbody tr th td ul li del ins strong code span div figure figcaption svg g clipPath defs pattern rect path use'.split(
                ' ',
            );
        expect([...names].filter((name) => !name.startsWith('#') && !own.includes(name))).toEqual([]);
    });

    it('runs nothing, fetches nothing and leads nowhere', () => {
        const attributes = all.flatMap(({ attrs }) => attrs ?? []);
        expect(attributes.filter(({ name }) => name.startsWith('on'))).toEqual([]);
        const places = attributes.filter(({ name }) => ['href', 'src', 'action', 'xlink:href'].includes(name));
        expect(places.length).toBeGreaterThan(0);
        expect(places.filter(({ value }) => !value.startsWith('#'))).toEqual([]);
        expect(attributes.filter(({ value }) => /url\((?!#)/.test(value))).toEqual([]);
        const policy = all.find(({ attrs }) => attrs?.some(({ value }) => value === 'Content-Security-Policy'));
        expect(policy?.attrs?.find(({ name }) => name === 'content')?.value).toContain("default-src 'none'");
    });

    it('shows the words of the recipe as words', () => {
        const text = all
            .filter(({ nodeName }) => nodeName === '#text')
            .map(({ value }) => value)
            .join('');
        expect(text).toContain('<script>alert(1)</script>');
    });

    it('draws the art over itself and every step of both strips, each shape once', () => {
        const ids = all.flatMap(({ attrs }) => attrs?.filter(({ name }) => name === 'id').map(({ value }) => value) ?? []);
        expect(new Set(ids).size).toBe(ids.length);
        const used = all.flatMap(({ nodeName, attrs }) =>
            nodeName === 'use' ? attrs!.filter(({ name }) => name === 'href') : [],
        );
        expect(used.filter(({ value }) => !ids.includes(value.slice(1)))).toEqual([]);
        const labels = all.flatMap(
            ({ attrs }) => attrs?.filter(({ name }) => name === 'aria-label').map(({ value }) => value) ?? [],
        );
        expect(labels).toContainEqual(expect.stringMatching(/^art flag: 20 mm² changed \(20 mm² burn now, 0 mm² no longer/));
        const rows = all.filter(({ nodeName, attrs }) => nodeName === 'tr' && attrs?.some(({ value }) => value === 'differs'));
        expect(rows.length).toBeGreaterThan(0);
    });
});

describe('a page of several reviews', () => {
    it('begins with an index that leads to each, and shows the art before the piece, the piece before the words', () => {
        const [one] = answers;
        const two = { ...one!, review: { ...one!.review, after: { ...one!.review.after, recipe: 'other', from: 'other.kerf' } } };
        const all = elements(parse(reviewHtml([one!, two], ['far'])) as unknown as Element);
        const ids = all.flatMap(({ attrs }) => attrs?.filter(({ name }) => name === 'id').map(({ value }) => value) ?? []);
        expect(new Set(ids).size).toBe(ids.length);
        const links = all
            .flatMap(({ nodeName, attrs }) => (nodeName === 'a' ? attrs! : []))
            .filter(({ name }) => name === 'href');
        expect(links.map(({ value }) => value).toSorted()).toEqual(['#review-1', '#review-2']);
        for (const { value } of links) expect(ids).toContain(value.slice(1));
        const page = reviewHtml([one!]);
        expect(page).not.toContain('<nav');
        const places = ['The art, laid over itself', 'The piece, step by step', 'What changed'].map((words) =>
            page.indexOf(words),
        );
        expect(places).toEqual(places.toSorted((a, b) => a - b));
        expect(places[0]).toBeGreaterThan(0);
        expect(page).toContain('prefers-color-scheme: dark');
    });

    it('shows names that a finding quotes as code, at the head and in the recipe', () => {
        const [one] = answers;
        const findings = [
            {
                change: 'gained' as const,
                severity: 'warning' as const,
                rule: 'thin-floor',
                message: 'No depth serves `outside-coupon`.',
            },
        ];
        const said = { ...one!, review: { ...one!.review, findings }, places: { ...one!.places, findings: [] } };
        const html = reviewHtml([said, said]);
        expect(html.match(/No depth serves <code>outside-coupon<\/code>\./g)!.length).toBeGreaterThanOrEqual(4);
        expect(html).not.toContain('`outside-coupon`');
    });

    it('says in words what got better or worse, where that can be said', () => {
        const of = (label: string, before: number, after: number) =>
            betterOrWorse({
                label,
                amounts: { before: { value: before, dimension: 'length' }, after: { value: after, dimension: 'length' } },
            });
        expect(of('floor left', 5, 3)).toBe('worse');
        expect(of('stands proud', 0.4, 0.1)).toBe('better');
        expect([of('depth', 1, 2), of('wait', 24, 4), of('cost', 1, 1)]).toEqual([undefined, undefined, undefined]);
        expect(reviewHtml(answers)).toMatch(/<td class="worse">[^<]+ worse<\/td>/);
    });
});

describe('a review as Markdown', () => {
    it('says the words of the recipe and does nothing with them', () => {
        const markdown = reviewMarkdown(answers.map(({ review }) => review));
        const html = new MarkdownIt({ html: true, linkify: true }).render(markdown);
        const all = elements(parse(html) as unknown as Element);
        const names = new Set(all.map(({ nodeName }) => nodeName));
        for (const name of ['script', 'img', 'a', 'em']) expect(names).not.toContain(name);
        expect(all.flatMap(({ attrs }) => attrs ?? []).filter(({ name }) => name.startsWith('on'))).toEqual([]);
        const text = all
            .filter(({ nodeName }) => nodeName === '#text')
            .map(({ value }) => value)
            .join('');
        expect(text).toContain('<script>alert(1)</script>');
        expect(text).toContain('**loud** _low_ [here](https://evil.example)');
        expect(text).not.toMatch(/@everyone/);
    });

    it('keeps within what a comment holds', () => {
        const { review } = answers[0]!;
        const many = {
            ...review,
            findings: Array.from({ length: 2000 }, () => ({
                change: 'gained' as const,
                rule: 'thin-floor',
                severity: 'error' as const,
                message: hostile,
            })),
        };
        const markdown = reviewMarkdown([many]);
        expect(markdown.length).toBeLessThan(65_536);
        expect(markdown).toContain('more than a comment can hold');
    });

    it('rows of a table keep their number of cells', () => {
        const rows = reviewMarkdown(answers.map(({ review }) => review))
            .split('\n')
            .filter((line) => line.startsWith('|'));
        expect(rows.length).toBeGreaterThan(3);
        for (const row of rows) expect(row.match(/(?<!\\)\|/g)).toHaveLength(5);
    });
});

describe('a review as text', () => {
    it('holds nothing that steers a terminal or turns the reading direction', () => {
        const text = reviewText(answers[0]!.review);
        expect(text).toContain('[31m');
        expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u);
    });

    it('says so when nothing differs', async () => {
        const text = inlayRecipe();
        expect(reviewText((await answer({ text }, { text })).review)).toContain('nothing that matters differs');
    });
});

describe('words made safe', () => {
    it.each([
        ['a\nb\r\nc', 'a b c'],
        [`a${esc}[0mb`, 'a [0mb'],
        ['a\u2028b\u202eb', 'a b b'],
        ['plain ± 0.5 mm²', 'plain ± 0.5 mm²'],
    ])('on one line: %j', (text, safe) => expect(oneLine(text)).toBe(safe));

    it.each(['`', '``', 'a`b', '', '|', '`a`'])('between back quotes: %j', (text) => {
        const html = new MarkdownIt().renderInline(codeSpan(text));
        expect(html).toMatch(/^<code>.*<\/code>$/);
        expect(html).toContain(text.replaceAll('|', '¦').trim());
    });

    it('names that the program quotes become code, whatever is in them', () => {
        const html = new MarkdownIt({ html: true }).renderInline(spokenMarkdown('There is no `a<b>|*c*` called *d* ` here.'));
        expect(html).toBe('There is no <code>a&lt;b&gt;¦*c*</code> called *d* ` here.');
    });

    it('long words are cut', () => {
        expect(escapeMarkdown('a'.repeat(10_000)).length).toBeLessThan(600);
    });
});
