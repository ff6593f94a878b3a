/**
 * The elements and attributes that a cell's output may bring into a page.
 *
 * @module
 */

const words = (text: string): string[] => text.trim().split(/\s+/);

const byLowerCase = (text: string): ReadonlyMap<string, string> =>
  new Map(words(text).map((name) => [name.toLowerCase(), name]));

/** HTML elements; any other leaves its content behind without its tags. */
export const HTML_ELEMENTS: ReadonlySet<string> = new Set(words(`
  a abbr article aside b bdi bdo blockquote br caption cite code col colgroup
  dd del details dfn div dl dt em figcaption figure footer h1 h2 h3 h4 h5 h6
  header hr i img ins kbd li mark meter ol p pre progress q rp rt ruby s samp
  section small span strong sub summary sup table tbody td tfoot th thead time
  tr u ul var wbr
`));

/** HTML elements that never have content. */
export const VOID_ELEMENTS: ReadonlySet<string> = new Set(words(`
  area base br col embed hr img input link meta param source track wbr
`));

/** Elements that go with all they hold. */
export const DROPPED_WHOLE: ReadonlySet<string> = new Set(words(`
  applet audio canvas datalist embed frame frameset head iframe math noembed
  noframes noscript object plaintext script select style svg template textarea
  title video xmp
`));

/** Elements whose content is no markup, up to their own end tag. */
export const RAW_TEXT_ELEMENTS: ReadonlySet<string> = new Set(words(`
  iframe noembed noframes noscript plaintext script style textarea title xmp
`));

/** SVG elements, by lower-case name; any other goes with all it holds. */
export const SVG_ELEMENTS: ReadonlyMap<string, string> = byLowerCase(`
  a circle clipPath defs desc ellipse feBlend feColorMatrix
  feComponentTransfer feComposite feDropShadow feFlood feFuncA feFuncB feFuncG
  feFuncR feGaussianBlur feMerge feMergeNode feMorphology feOffset feTile
  filter foreignObject g image line linearGradient marker mask metadata path
  pattern polygon polyline radialGradient rect stop style svg switch symbol
  text textPath title tspan use view
`);

/** Attributes of HTML elements, beside `aria-*`. */
export const HTML_ATTRIBUTES: ReadonlySet<string> = new Set(words(`
  align alt class colspan datetime dir headers height href id lang max min open
  reversed role rowspan scope span src start style title valign value width
`));

/** Attributes of SVG elements by lower-case name, beside `aria-*`. */
export const SVG_ATTRIBUTES: ReadonlyMap<string, string> = byLowerCase(`
  alignment-baseline baseline-shift class clip-path clip-rule clipPathUnits
  color color-interpolation color-interpolation-filters cx cy d direction
  dominant-baseline dx dy exponent fill fill-opacity fill-rule filter
  filterUnits flood-color flood-opacity font-family font-size font-stretch
  font-style font-variant font-variant-numeric font-weight fr fx fy
  gradientTransform gradientUnits height href id in in2 intercept
  k1 k2 k3 k4 lang lengthAdjust letter-spacing marker-end marker-mid
  marker-start markerHeight markerUnits markerWidth mask maskContentUnits
  maskUnits mode offset opacity operator order orient overflow paint-order
  pathLength patternContentUnits patternTransform patternUnits points
  preserveAspectRatio primitiveUnits r radius refX refY result role rotate rx ry
  shape-rendering slope spreadMethod startOffset stdDeviation stop-color
  stop-opacity stroke stroke-dasharray stroke-dashoffset stroke-linecap
  stroke-linejoin stroke-miterlimit stroke-opacity stroke-width style
  tableValues text-anchor text-decoration text-rendering textLength transform
  transform-origin type unicode-bidi values vector-effect viewBox visibility
  width word-spacing writing-mode x x1 x2 xlink:href y y1 y2
`);

/** Attributes whose value is a list of ids. */
export const ID_LIST_ATTRIBUTES: ReadonlySet<string> = new Set(words(`
  aria-activedescendant aria-controls aria-describedby aria-details
  aria-errormessage aria-flowto aria-labelledby aria-owns headers
`));
