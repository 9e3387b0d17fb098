/**
 * Small drawings, each of one thing that is easy to read wrongly. All black on white, drawn for
 * these tests, and each compared with an independent renderer's pixels.
 */
const ns = 'xmlns="http://www.w3.org/2000/svg"';
const star = 'M50 5L79 95L3 39h94L21 95z';

function square(content: string, attributes = ''): string {
    return `<svg ${ns} width="200" height="200" viewBox="0 0 100 100" ${attributes}>${content}</svg>`;
}

export const drawings: Readonly<Record<string, string>> = {
    'a star by nonzero': square(`<path d="${star}"/>`),
    'a star by evenodd': square(`<path d="${star}" fill-rule="evenodd"/>`),
    'a ring by winding the other way': square('<path d="M10 10h80v80h-80zM30 30v40h40v-40z"/>'),
    'a ring by evenodd, wound the same way': square('<path fill-rule="evenodd" d="M10 10h80v80h-80zM30 30h40v40h-40z"/>'),
    'a full square where both wind the same way': square('<path d="M10 10h80v80h-80zM30 30h40v40h-40z"/>'),
    'white laid on dark, and dark on that': square(
        '<rect x="10" y="10" width="80" height="80"/><circle cx="50" cy="50" r="30" fill="#fff"/><circle cx="50" cy="50" r="10"/>',
    ),
    'a translucent white that does not hide the dark': square(
        '<rect x="10" y="10" width="80" height="80"/><circle cx="50" cy="50" r="30" fill="#fff" fill-opacity="0.3"/>',
    ),
    'a translucent white that does': square(
        '<rect x="10" y="10" width="80" height="80"/><circle cx="50" cy="50" r="30" fill="#fff" fill-opacity="0.7"/>',
    ),
    'two pale greys that are dark together': square(
        '<g fill="#000" fill-opacity="0.4"><rect x="10" y="10" width="50" height="50"/><rect x="40" y="40" width="50" height="50"/></g>',
    ),
    'a translucent group whose parts do not add up': square(
        '<g opacity="0.4"><rect x="10" y="10" width="50" height="50"/><rect x="40" y="40" width="50" height="50"/></g><g opacity="0.6"><rect x="60" y="5" width="30" height="20"/><rect x="70" y="15" width="25" height="20" fill="#fff"/></g>',
    ),
    'a translucent shape whose stroke hides its fill': square(
        '<rect x="25" y="25" width="50" height="50" stroke="#fff" stroke-width="20" opacity="0.8"/>',
    ),
    'opacity of groups in groups': square(
        '<g opacity="0.8"><g opacity="0.8"><rect x="10" y="10" width="30" height="80"/><g opacity="0.7"><rect x="60" y="10" width="30" height="80"/></g></g></g>',
    ),
    'mitres within the limit, past it, and just at it': square(
        '<g fill="none" stroke="#000" stroke-width="6"><path d="M10 40L25 10L40 40"/><path stroke-miterlimit="2" d="M60 40L75 10L90 40"/><path stroke-miterlimit="1.4143" d="M20 60h20v20"/><path stroke-miterlimit="1.4141" d="M60 60h20v20"/></g>',
    ),
    'joins and caps of each kind': square(
        '<g fill="none" stroke="#000" stroke-width="9"><path stroke-linejoin="round" stroke-linecap="round" d="M10 40L25 12L40 40"/><path stroke-linejoin="bevel" stroke-linecap="square" d="M60 40L75 12L90 40"/><path stroke-linejoin="miter" d="M10 90L25 62L40 90"/><path stroke-linecap="square" d="M60 80L85 65"/></g>',
    ),
    'dots: subpaths without length': square(
        '<g fill="none" stroke="#000" stroke-width="20"><path stroke-linecap="round" d="M20 20z"/><path stroke-linecap="square" d="M70 20l0 0"/><path d="M20 70z"/><path stroke-linecap="round" d="M70 70m5 5"/></g>',
    ),
    'dashes with an offset, caps and an odd list': square(
        '<g fill="none" stroke="#000" stroke-width="4"><path d="M5 10h90" stroke-dasharray="10 5"/><path d="M5 25h90" stroke-dasharray="10 5" stroke-dashoffset="7"/><path d="M5 40h90" stroke-dasharray="9 4 2"/><path d="M5 55h90" stroke-dasharray="0 8" stroke-linecap="round"/><path d="M5 70h90" stroke-dasharray="6 9" stroke-linecap="square" stroke-dashoffset="-3"/><path d="M5 85h90" stroke-dasharray="50%"/></g>',
    ),
    'dashes around closed shapes': square(
        '<g fill="none" stroke="#000" stroke-width="5"><rect x="10" y="10" width="30" height="30" stroke-dasharray="13 7"/><circle cx="72" cy="26" r="18" stroke-dasharray="9 6"/><rect x="10" y="60" width="30" height="30" rx="8" stroke-dasharray="11 5"/><ellipse cx="72" cy="75" rx="20" ry="12" stroke-dasharray="7 5" stroke-dashoffset="3"/></g>',
    ),
    'a stroke stretched by an uneven scale': square(
        '<g transform="scale(3 0.8)"><circle cx="16" cy="60" r="10" fill="none" stroke="#000" stroke-width="5"/></g>',
    ),
    'a stroke sheared, turned and mirrored': square(
        '<g transform="translate(50 50) rotate(30) skewX(25) scale(-1 1.5)"><path d="M-20 -15h30v25" fill="none" stroke="#000" stroke-width="8" stroke-linejoin="round" stroke-linecap="square"/></g>',
    ),
    'a matrix, and rotate about a point': square(
        '<rect width="20" height="10" transform="matrix(1.5 .4 -.3 1.2 30 10)"/><rect x="40" y="60" width="40" height="10" transform="rotate(-35 60 65)"/>',
    ),
    'glued numbers, flags and exponents': square(
        '<path d="M1e1.1e2l80-.5.5 80-80.5.5zM30 40a9 9 0 1018 0 9 9 0 10-18 0z" fill-rule="evenodd"/>',
    ),
    'relative moves after a closing': square('<path d="M10 10h20v20h-20zm40 0h20v20h-20zl-20 60h30z"/>'),
    'smooth curves with and without something to reflect': square(
        '<path fill="none" stroke="#000" stroke-width="3" d="M5 30C15 0 25 0 35 30S55 60 65 30L75 30S85 10 95 30M5 75Q20 45 35 75T65 75L72 75T95 75"/>',
    ),
    'arcs: all four, radii too small, turned': square(
        '<g fill="none" stroke="#000" stroke-width="2"><path d="M20 30a15 10 0 0 0 20 10"/><path d="M20 30a15 10 0 0 1 20 10"/><path d="M20 30a15 10 0 1 0 20 10"/><path d="M20 30a15 10 0 1 1 20 10"/><path d="M55 60a2 1 30 0 1 35 20"/><path d="M10 90a25 8 40 1 0 30-5"/></g>',
    ),
    'rounded rectangles: one radius, both, too large': square(
        '<rect x="5" y="5" width="40" height="30" rx="10"/><rect x="55" y="5" width="40" height="30" rx="4" ry="14"/><rect x="5" y="55" width="40" height="30" rx="90" ry="5"/><rect x="55" y="55" width="40" height="30" ry="40"/>',
    ),
    'an open polyline filled, and a polygon stroked': square(
        '<polyline points="10,10 40,10 40,40"/><polygon points="60 10 90 10 90 40" fill="none" stroke="#000" stroke-width="4"/><polyline points="10,60 40,60 40,90" fill="none" stroke="#000" stroke-width="4"/>',
    ),
    'use with a transform, x and y, and inherited fill': square(
        '<defs><rect id="a" width="20" height="20"/></defs><use href="#a" x="5" y="5"/><use href="#a" x="10" transform="translate(40 10) rotate(20)"/><g fill="#fff" stroke="#000" stroke-width="3"><use href="#a" x="10" y="60"/></g><use href="#a" x="5" y="3" transform="scale(2) translate(25 25)"/>',
    ),
    'symbols: sized by the use, cut at their edge': square(
        '<symbol id="s" viewBox="0 0 10 10"><circle cx="5" cy="5" r="6"/></symbol><use href="#s" x="5" y="5" width="40" height="40"/><use href="#s" x="55" y="5" width="40" height="20"/><symbol id="t" viewBox="0 0 10 10" preserveAspectRatio="xMaxYMax slice"><circle cx="5" cy="5" r="4"/></symbol><use href="#t" x="5" y="55" width="40" height="30"/><symbol id="o" viewBox="0 0 10 10" overflow="visible"><circle cx="5" cy="5" r="6"/></symbol><use href="#o" x="60" y="55" width="30" height="30"/>',
    ),
    'a nested svg drawn by use, at its own size and at another': square(
        '<defs><svg id="s" x="5" y="5" width="20" height="20" viewBox="0 0 10 10"><circle cx="5" cy="5" r="6"/></svg></defs><use href="#s" x="5" y="5"/><use href="#s" x="45" y="40" width="40" height="30"/>',
    ),
    'lines of no width, shapes of no size, and fills that are none': square(
        '<rect x="5" y="5" width="30" height="0" stroke="#000"/><circle r="0" stroke="#000"/><path d="M5 50h40" stroke="#000" stroke-width="0"/><rect x="50" y="50" width="40" height="40" fill="none"/><line x1="5" y1="80" x2="40" y2="80" fill="#000"/><rect x="60" y="10" width="20" height="20"/>',
    ),
    'nested svg: meet, slice and none': square(
        ['xMidYMid meet', 'xMinYMin slice', 'none', 'xMaxYMid meet']
            .map(
                (value, i) =>
                    `<svg x="${5 + 50 * (i % 2)}" y="${5 + 50 * Math.floor(i / 2)}" width="40" height="25" viewBox="0 0 20 20" preserveAspectRatio="${value}"><path d="M0 0h20v20h-20z" fill="#fff"/><circle cx="10" cy="10" r="9"/><rect x="1" y="1" width="6" height="3"/></svg>`,
            )
            .join(''),
    ),
    'percentages of a nested viewport': square(
        '<svg x="10%" y="20%" width="50%" height="60%"><rect x="10%" y="10%" width="80%" height="20%"/><circle cx="50%" cy="70%" r="20%"/><line x1="5%" y1="40%" x2="95%" y2="40%" stroke="#000" stroke-width="5%"/></svg>',
    ),
    units: `<svg ${ns} width="60mm" height="40mm"><rect x="1mm" y="1mm" width="2cm" height="0.5in"/><rect x="25mm" y="36pt" width="3pc" height="30px"/><circle cx="2in" cy="30mm" r="5mm"/><rect x="1mm" y="30mm" width="40px" height="12pt"/></svg>`,
    'em and ex': square(
        '<g font-size="10"><rect x="1em" y="1em" width="2em" height="3ex"/><g style="font-size:5px"><rect x="10em" y="2em" width="4em" height="4em" /></g></g>',
    ),
    'a viewBox with an offset, fitted to one side': `<svg ${ns} width="120" height="60" viewBox="10 20 100 100" preserveAspectRatio="xMinYMax slice"><circle cx="60" cy="70" r="40"/><rect x="10" y="100" width="20" height="20"/></svg>`,
    'style: specificity, order and importance': square(
        `<style>rect{fill:#fff} .a{fill:#000} #b.a{fill:#fff} g > rect.c{fill:#000} rect.d{fill:#000} #q{fill:#fff} .e{fill:#000}.e{fill:#fff} svg rect[width="11"]{fill:#000} /* no */ .f, .g{fill:#000}</style>
        <rect width="100" height="100" fill="#fff"/><rect x="5" y="5" width="20" height="20" fill="#000"/><rect class="a" x="30" y="5" width="20" height="20"/><rect class="a" id="b" x="55" y="5" width="20" height="20"/><g><rect class="c" x="5" y="30" width="20" height="20"/></g><rect class="d" id="q" x="30" y="30" width="20" height="20"/><rect class="e" x="55" y="30" width="20" height="20"/><rect x="5" y="55" width="11" height="20"/><rect class="x g" x="30" y="55" width="20" height="20"/><rect style="fill:#000" x="55" y="55" width="20" height="20"/>`,
    ),
    'style: children, siblings and first-child': square(
        `<style>g rect:first-child{fill:#fff} g > circle + circle{fill:#fff} [id="k1"]{stroke:#000;stroke-width:3}</style><g><rect x="5" y="5" width="20" height="20"/><rect x="30" y="5" width="20" height="20"/></g><g><circle cx="20" cy="60" r="10"/><circle id="k1" cx="50" cy="60" r="10"/></g>`,
    ),
    'currentColor and inherit': square(
        '<g color="#000" fill="currentColor"><rect x="5" y="5" width="20" height="20"/><g color="#fff" fill="currentColor"><rect x="30" y="5" width="20" height="20"/><rect x="55" y="5" width="20" height="20" fill="#000"/></g></g><g stroke="#000" stroke-width="4" fill="#fff"><rect x="10" y="40" width="30" height="30"/><rect x="50" y="40" width="30" height="30" fill="inherit" stroke="none"/></g>',
    ),
    'colours in every form': square(
        [
            '#000',
            'black',
            'rgb(0,0,0)',
            'rgb(10%, 10%, 10%)',
            'hsl(0, 0%, 10%)',
            '#fff',
            'white',
            'RGB(255 255 255)',
            'rgba(0,0,0,0.2)',
            'hsla(240,100%,20%,0.9)',
            'navy',
            'yellow',
            '#00f8',
            '#ff08',
            'transparent',
            'rebeccapurple',
        ]
            .map(
                (colour, i) =>
                    `<rect x="${3 + 25 * (i % 4)}" y="${3 + 25 * Math.floor(i / 4)}" width="18" height="18" fill="${colour}"/>`,
            )
            .join(''),
    ),
    'a clip path': square(
        '<clipPath id="c"><circle cx="50" cy="50" r="30"/></clipPath><g clip-path="url(#c)"><rect x="0" y="0" width="55" height="100"/></g>',
    ),
    'a clip path by evenodd, moved, and clipped itself': square(
        `<clipPath id="d"><rect x="0" y="0" width="100" height="70"/></clipPath><clipPath id="c" clip-path="url(#d)" transform="translate(5 0)"><path clip-rule="evenodd" d="${star}"/></clipPath><rect width="100" height="100" clip-path="url(#c)"/>`,
    ),
    'clip paths in clip paths of moved groups': square(
        '<clipPath id="c"><rect x="10" y="10" width="60" height="60" transform="rotate(15 40 40)"/></clipPath><clipPath id="d"><circle cx="40" cy="40" r="32" clip-path="url(#c)"/></clipPath><g transform="translate(20 10) scale(.9)"><g clip-path="url(#c)"><rect clip-path="url(#d)" width="100" height="100"/></g></g>',
    ),
    'a clip path in the units of what it clips': square(
        '<clipPath id="c" clipPathUnits="objectBoundingBox"><circle cx=".5" cy=".5" r=".5"/></clipPath><rect x="10" y="10" width="60" height="30" clip-path="url(#c)"/><g clip-path="url(#c)"><rect x="20" y="50" width="30" height="30"/><rect x="60" y="60" width="30" height="30"/></g>',
    ),
    'a clip path of two shapes, one drawn by use, one hidden': square(
        '<defs><circle id="o" r="20"/></defs><clipPath id="c"><use href="#o" x="30" y="30"/><rect x="50" y="50" width="40" height="40"/><rect x="60" y="0" width="40" height="40" visibility="hidden"/></clipPath><rect width="100" height="100" clip-path="url(#c)"/>',
    ),
    'paint-order and a stroke over its own fill': square(
        '<g stroke="#fff" stroke-width="12"><circle cx="30" cy="50" r="20"/><circle cx="75" cy="50" r="20" paint-order="stroke"/></g>',
    ),
    'display and visibility': square(
        '<g display="none"><rect width="50" height="50"/></g><g visibility="hidden"><rect x="50" width="20" height="20"/><rect x="50" y="50" width="30" height="30" visibility="visible"/></g><rect x="5" y="60" width="20" height="20" style="display:none"/><rect x="30" y="60" width="10" height="10"/>',
    ),
    'switch and languages': square(
        '<switch><rect systemLanguage="fr" width="50" height="50"/><rect systemLanguage="en" x="50" width="50" height="50"/><rect width="100" height="100"/></switch><rect y="60" width="20" height="20" systemLanguage="de"/>',
    ),
    'shapes partly off the page': square(
        '<circle cx="0" cy="50" r="30"/><rect x="80" y="-50" width="500" height="100" /><path d="M-900 95h2000" stroke="#000" stroke-width="4"/>',
    ),
    'slanting edges that leave the page and come back': square(
        '<polygon points="-50 20 150 -30 120 180 60 -20 20 150 -80 90"/><path fill-rule="evenodd" d="M50-200L260 300L-160 300z M50 60l300 90h-600z" fill="#fff"/>',
    ),
    'gradients along a line': square(
        '<linearGradient id="g" x1=".2" x2=".7"><stop stop-color="#000"/><stop offset=".4" stop-color="#ddd"/><stop offset="1" stop-color="#222"/></linearGradient><rect x="10" y="10" width="80" height="30" fill="url(#g)"/><linearGradient id="h" href="#g" gradientTransform="rotate(40 .5 .5) scale(.3)" spreadMethod="reflect"/><circle cx="30" cy="70" r="20" fill="url(#h)"/><linearGradient id="i" gradientUnits="userSpaceOnUse" x1="60" y1="60" x2="70" y2="65" spreadMethod="repeat"><stop stop-color="#fff"/><stop offset=".3" stop-color="#fff"/><stop offset=".3" stop-color="#000"/></linearGradient><path d="M60 55h30v30z" fill="url(#i)" transform="rotate(10 75 70)"/>',
    ),
    'gradients from a point': square(
        '<radialGradient id="g"><stop stop-color="#fff"/><stop offset="1" stop-color="#000"/></radialGradient><rect x="5" y="10" width="60" height="35" fill="url(#g)"/><radialGradient id="h" href="#g" cx=".5" cy=".5" r=".4" fx=".35" fy=".6"/><circle cx="30" cy="72" r="22" fill="url(#h)"/><radialGradient id="i" gradientUnits="userSpaceOnUse" cx="75" cy="70" r="8" spreadMethod="reflect"><stop offset=".1" stop-color="#000"/><stop offset=".9" stop-color="#fff"/></radialGradient><rect x="58" y="52" width="36" height="36" fill="url(#i)"/><circle cx="82" cy="25" r="10" fill="none" stroke-width="8" stroke="url(#h)"/>',
    ),
    'a gradient of one tone': square(
        '<linearGradient id="g"><stop offset="0" stop-color="#000"/><stop offset="1" stop-color="#000"/></linearGradient><rect x="10" y="10" width="50" height="50" fill="url(#g)"/><linearGradient id="h" href="#g"/><circle cx="75" cy="75" r="15" fill="url(#h)"/>',
    ),
    'a paint that is not there, with something to fall back on': square(
        '<rect x="10" y="10" width="30" height="30" fill="url(#none) #000"/><rect x="60" y="10" width="30" height="30" fill="url(#none) none"/>',
    ),
    'a scribble whose pen is thicker than its turns': square(
        '<path fill="none" stroke="#000" stroke-width="9" stroke-linecap="round" d="M20 20'.concat(
            Array.from(
                { length: 60 },
                (_, i) => `S${20 + ((i * 37) % 60)} ${20 + ((i * 23) % 60)} ${25 + ((i * 17) % 50)} ${25 + ((i * 29) % 50)}`,
            ).join(''),
            '"/>',
        ),
    ),
    'thick strokes around tight curves': square(
        '<g fill="none" stroke="#000" stroke-width="20"><path d="M20 50C20 45 24 45 24 50"/><path d="M50 80C90 60 60 60 90 85" stroke-linejoin="bevel"/></g>',
    ),
    'markers at each vertex, turned and not': square(
        '<marker id="m" markerWidth="4" markerHeight="4" refX="1" refY="2" orient="auto"><path d="M0 0L4 2L0 4z"/></marker><marker id="d" markerUnits="userSpaceOnUse" markerWidth="8" markerHeight="8" refX="4" refY="4" viewBox="0 0 8 8"><rect x="1" y="1" width="6" height="6"/></marker><g fill="none" stroke="#000" stroke-width="2"><path d="M10 10L40 20L30 40" marker-start="url(#d)" marker-mid="url(#d)" marker-end="url(#m)"/><path d="M60 10C90 10 90 40 60 40" marker-start="url(#m)" marker-end="url(#m)"/><polyline points="20,60 45,70 25,90" marker-start="url(#m)" marker-mid="url(#m)" marker-end="url(#m)"/><path d="M60 70a15 10 0 0 1 30 10" marker-start="url(#m)" marker-end="url(#m)"/></g>',
    ),
    'a marker cut at its edge, scaled by the stroke, and turned by an angle': square(
        '<marker id="m" viewBox="0 0 10 10" refX="5" refY="5" markerWidth="6" markerHeight="6" orient="30"><circle cx="5" cy="5" r="7"/></marker><path d="M20 30h50v40" fill="none" stroke="#000" stroke-width="3" marker-start="url(#m)" marker-mid="url(#m)" marker-end="url(#m)"/>',
    ),
    'clip-rule and fill-rule taken over from the root': `<svg ${ns} viewBox="0 0 100 100" width="100" height="100" style="fill-rule:evenodd;clip-rule:evenodd"><clipPath id="c"><path d="${star}"/></clipPath><rect width="100" height="100" clip-path="url(#c)"/></svg>`,
    'a prefix for every name': `<s:svg xmlns:s="http://www.w3.org/2000/svg" viewBox="0 0 100 100" width="100" height="100"><s:rect width="70" height="70"/><s:g fill="#fff"><s:rect x="10" y="10" width="50" height="50"/></s:g></s:svg>`,
    'entities and character data': `<!DOCTYPE svg [<!ENTITY dark "#000"><!ENTITY box "M10 10h80v80h-80z">]><svg ${ns} viewBox="0 0 100 100" width="100" height="100"><style><![CDATA[ .w > path { fill: #fff } ]]></style><path d="&box;" fill="&dark;"/><g class="w"><path d="M30&#x20;30h40v40h-40z"/></g></svg>`,
    'lists in attributes with odd spaces': square(
        '<path d=" M 10,10\n\t20 , 10 ,20 20 Z " transform=" translate( 5 , 5 )\n scale(2)"/><polygon points="60,60,90,60 90 90"/>',
    ),
    'an xlink:href': `<svg ${ns} xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 100 100" width="100" height="100"><defs><g id="a"><rect width="20" height="20"/><circle cx="40" cy="40" r="10"/></g></defs><use xlink:href="#a" x="10" y="10"/></svg>`,
};
