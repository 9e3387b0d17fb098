/**
 * The headings of a page with their anchors, as GitHub and the editor's own preview make them: the second of a name has `-1` behind it.
 * @param tokens of markdown-it
 */
export function anchored(tokens) {
    const times = new Map();
    return tokens.flatMap((heading, at) => {
        if (heading.type !== 'heading_open') return [];
        const title = plain(tokens[at + 1]);
        const slug = slugOf(title);
        const count = times.get(slug) ?? 0;
        times.set(slug, count + 1);
        return [{ heading, at, title, id: count === 0 ? slug : `${slug}-${count}` }];
    });
}

/**
 * A page cut at its headings, as what a search looks through.
 * @param tokens of markdown-it
 * @returns {{ id: string, title: string, text: string }[]} `id` is the address with its anchor
 */
export function sectionsOf(url, tokens) {
    return anchored(tokens).map(({ at, title, id }, index, all) => {
        const words = tokens.slice(at + 2, all[index + 1]?.at).flatMap((token) => {
            if (token.type === 'inline') return [plain(token)];
            return token.type === 'fence' ? [token.content] : [];
        });
        return { id: `${url}#${id}`, title, text: words.join('\n') };
    });
}

function plain({ children }) {
    return children.map(({ type, content }) => (type === 'softbreak' ? ' ' : content)).join('');
}

function slugOf(heading) {
    return heading
        .toLowerCase()
        .replaceAll(/[^\p{L}\p{N} _-]/gu, '')
        .trim()
        .replaceAll(' ', '-');
}
