/** What page and API see of the agent. */
@NullMarked
package meltkeeper.web.view;

import org.jspecify.annotations.NullMarked;
