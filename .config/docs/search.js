// Looks through the sections of all pages, which stand in sections.js: no server is asked, so that it works from a disk too.
(() => {
    const field = document.getElementById('search');
    const found = document.getElementById('found');
    const results = document.getElementById('results');
    let index;

    function search() {
        const words = field.value.trim();
        results.replaceChildren();
        found.textContent = '';
        if (words === '') return;
        if (index === undefined) {
            index = new MiniSearch({
                fields: ['title', 'text'],
                storeFields: ['title', 'page'],
                processTerm: (term) => term.toLowerCase(),
            });
            index.addAll(globalThis.sections);
        }
        const all = index.search(words, { prefix: true, fuzzy: 0.15, combineWith: 'AND', boost: { title: 4 } });
        found.textContent = all.length === 0 ? 'Nothing found. Fewer or other words?' : `${all.length} found`;
        results.append(
            ...all.slice(0, 12).map(({ id, title, page }) => {
                const link = document.createElement('a');
                link.href = id;
                link.textContent = title;
                const item = document.createElement('li');
                item.append(link);
                // Many pages have a section of the same name.
                if (page !== title) {
                    const where = document.createElement('span');
                    where.textContent = page;
                    item.append(where);
                }
                return item;
            }),
        );
    }

    // On a narrow screen the list of pages would stand before each text.
    if (matchMedia('(max-width: 760px)').matches) document.getElementById('pages').open = false;
    field.addEventListener('input', search);
    search();
})();
