/** How a canvas is asked for what it shows, where it does not keep it itself: a PNG in base64. */
const pictures = new WeakMap<HTMLCanvasElement, () => string>();

/** @returns how to stop that */
export function offerPicture(canvas: HTMLCanvasElement, picture: () => string): () => void {
    pictures.set(canvas, picture);
    return () => pictures.delete(canvas);
}

/** What is for the hand alone and says nothing on paper. */
const controls = [
    '.zoom',
    '.turning',
    '.round-tools',
    '.shows',
    '.lies',
    '.pieces',
    '.fix',
    '.art-grip',
    '.depth-grip',
    '.ruler-end',
    '.measured button',
    '.on',
    '.press button',
    '.hidden',
    '.contents',
    '.recipe-choice',
    '.for-hand',
    'input',
    'select',
    'textarea',
    'output:empty',
];

/** Attributes that say what can be done with a thing, or that could do something. */
const handles =
    /^(?:on|tabindex$|role$|aria-(?:selected|controls|expanded|pressed|value|orientation|live|roledescription|labelledby))/;

/** The page as it is, as markup that stands by itself: pictures as data, without what is for the hand. */
export function pageBody(root: HTMLElement): string {
    const copy = root.cloneNode(true) as HTMLElement;
    const drawn = [...root.querySelectorAll('canvas')];
    [...copy.querySelectorAll('canvas')].forEach((canvas, index) => {
        const image = document.createElement('img');
        image.src = pictureOf(drawn[index]!);
        image.alt = canvas.getAttribute('aria-label') ?? '';
        image.className = 'drawn';
        // Drawn in the ink of the theme, which white paper may not show.
        image.style.background = getComputedStyle(document.body).backgroundColor;
        canvas.replaceWith(image);
    });
    for (const each of copy.querySelectorAll(controls.join(','))) each.remove();
    for (const each of copy.querySelectorAll('button')) {
        const plain = document.createElement('span');
        plain.className = each.className;
        plain.append(...each.childNodes);
        each.replaceWith(plain);
    }
    for (const each of copy.querySelectorAll('details')) each.open = true;
    for (const each of copy.querySelectorAll('*')) {
        for (const name of each.getAttributeNames()) if (handles.test(name)) each.removeAttribute(name);
    }
    for (const svg of copy.querySelectorAll('.picture > svg')) svg.setAttribute('role', 'img');
    return copy.innerHTML;
}

function pictureOf(canvas: HTMLCanvasElement): string {
    const own = pictures.get(canvas);
    return own === undefined ? canvas.toDataURL('image/png') : `data:image/png;base64,${own()}`;
}
