/** What a workshop sells: pipe, coils, spreader plates, boards, fittings, coolants and pumps. Knows no floor and no loop. */
package org.runbend.catalog.product;
