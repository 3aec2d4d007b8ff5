@NullMarked
package meltkeeper.web;

import org.jspecify.annotations.NullMarked;
