import { stock } from './stock';

/** A maple cleat let into a walnut board. A ruin changes one line of it. */
export const inlaid = `${stock}
recipe cleat-board "Cleat board" {
  revision 1
  make 2
  laser slip

  art cleat "cleat.svg"

  blank plank {
    of walnut-12
    size 160 x 120 mm
    grain along width
  }
  blank leaf {
    of maple-06
    size 90 x 80 mm
    grain along width
    backing foil
  }

  engrave pocket on plank {
    art cleat
    depth 0.55 mm
    scan across grain
    air off
  }
  engrave relief on leaf {
    art cleat inverse within grown 6 mm
    mirror
    depth through
    scan across grain
    air off
  }
  inlay relief into pocket {
    clearance 0.15 mm
    glue wood-glue
  }
  wait 12 h
  peel leaf
  sand plank {
    flush then 0.10 mm
    grits 120, 180, 240
  }
  finish plank with oil-varnish
}
`;

/** Oars in an oak board, filled with blue. */
export const filled = `${stock}
recipe oar-tag "Oar tag" {
  revision 1
  make 6
  laser slip

  art oars "oars.svg"

  blank tag {
    of oak-9
    size 90 x 60 mm
    grain along width
  }

  engrave hollow on tag {
    art oars at 45, 30 mm
    depth 1.0 mm
    scan across grain
    air off
  }
  seal tag with shellac {
    coats 2
  }
  wait 2 h
  fill hollow with harbour-blue
  wait 24 h
  sand tag {
    flush then 0.20 mm
    grits 100, 150, 220
  }
  finish tag with oil-varnish
}
`;

/** The text with one line changed; fails where the line is not there. */
export function but(text: string, from: string, to: string): string {
    if (!text.includes(from)) throw new Error(`There is no “${from}” in the recipe.`);
    return text.replace(from, to);
}
