// Tins at a glance: from which tin, to which; the matrix is the control.
export function glance() {}
