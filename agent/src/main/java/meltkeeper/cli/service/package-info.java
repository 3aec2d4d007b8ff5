/** What the service manager is told of a running agent: that it is ready, alive, or stopping. */
@NullMarked
package meltkeeper.cli.service;

import org.jspecify.annotations.NullMarked;
