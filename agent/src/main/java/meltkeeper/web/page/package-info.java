/**
 * The page: what the shop sees and taps. Each view is a record of what is shown, made of the
 * agent's answers and dressed by a template; each act is a form that works without a script.
 */
@NullMarked
package meltkeeper.web.page;

import org.jspecify.annotations.NullMarked;
