@org.jspecify.annotations.NullMarked
package meltkeeper.web.browser;
