package browser

import "strings"

// split parts a key from the keys that are held with it: Control+z. A plus
// alone is a key.
func split(key string) (held []string, last string) {
	parts := strings.Split(key, "+")
	if key == "+" || len(parts) == 1 {
		return nil, key
	}
	return parts[:len(parts)-1], parts[len(parts)-1]
}

// named are the code points by which WebDriver names keys that give no
// character.
//
// Ref: W3C WebDriver, 17.4.2 "Keyboard actions", table of normalised keys.
var named = map[string]string{
	"Backspace": "\uE003", "Tab": "\uE004", "Enter": "\uE007", "Shift": "\uE008", "Control": "\uE009", "Alt": "\uE00A",
	"Escape": "\uE00C", "PageUp": "\uE00E", "PageDown": "\uE00F", "End": "\uE010", "Home": "\uE011",
	"ArrowLeft": "\uE012", "ArrowUp": "\uE013", "ArrowRight": "\uE014", "ArrowDown": "\uE015",
	"Insert": "\uE016", "Delete": "\uE017", "Meta": "\uE03D", "F2": "\uE032",
}

// wire is a key as WebDriver writes it.
func wire(name string) string {
	if code, ok := named[name]; ok {
		return code
	}
	return name
}
