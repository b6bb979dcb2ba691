/** How a diagram looks where it stands alone, in a file or on paper: dark on light, or light on dark as the viewer likes it. */
export const DIAGRAM_STYLE = `
svg.diagram { color: #111; background: #fff; font-family: system-ui, sans-serif; }
.diagram .line { fill: none; stroke: currentColor; stroke-width: 1.2; }
.diagram .wire { stroke-width: 1.1; }
.diagram .dashed { stroke-dasharray: 3 2; }
.diagram .solid, .diagram .pin { fill: currentColor; stroke: none; }
.diagram .end { fill: currentColor; }
.diagram .hit { fill: transparent; stroke: none; }
.diagram text { fill: currentColor; stroke: none; }
.diagram .sheet-title { font-size: 15px; font-weight: 700; }
.diagram .title { font-size: 11px; font-weight: 700; }
.diagram .small { font-size: 9px; }
.diagram .letters { font-size: 10px; }
.diagram .sign { font-size: 11px; font-weight: 700; }
.diagram .ring { fill: none; stroke: currentColor; stroke-width: 1.6; }
.diagram .fails > .wire, .diagram .fails > .frame { stroke-width: 2.4; }
.diagram .unknown > .wire { stroke-dasharray: 5 3; }
`;

const DARK = `@media (prefers-color-scheme: dark) { svg.diagram { color: #eee; background: #161616; } }`;

export const FILE_STYLE = `${DIAGRAM_STYLE}${DARK}`;
