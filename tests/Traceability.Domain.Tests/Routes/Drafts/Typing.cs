using Traceability.Domain.Routes.Drafts;

namespace Traceability.Domain.Tests.Routes.Drafts;

/// <summary>Types a draft into a form, field by field, as the editor's page does.</summary>
internal static class Typing
{
    public static Dictionary<string, string> Of(DraftField shape, DraftMap map)
    {
        var typed = new Dictionary<string, string>();
        Type(shape, map, "", typed);
        return typed;
    }

    private static void Type(DraftField shape, DraftMap map, string path, Dictionary<string, string> typed)
    {
        foreach (var field in shape.Fields)
        {
            var name = path + field.Key;
            switch (field.Sort)
            {
                case DraftSort.Flag when map.Is(field):
                    typed[name] = "true";
                    break;
                case DraftSort.Flag:
                    break;
                case DraftSort.Words:
                    typed[name] = string.Join(", ", map.List(field.Key));
                    break;
                case DraftSort.Sentences:
                    typed[name] = string.Join("\r\n", map.List(field.Key));
                    break;
                case DraftSort.Items:
                    foreach (var (item, i) in map.Items(field.Key).Append(new()).Select((item, i) => (item, i)))
                    {
                        Type(field, item, $"{name}[{i}].", typed);
                    }

                    break;
                case DraftSort.Group:
                    Type(field, map.Group(field.Key), name + ".", typed);
                    break;
                case DraftSort.Numbers:
                    foreach (var key in map.Group(field.Key).Names)
                    {
                        typed[$"{name}.{key}"] = map.Group(field.Key)[key];
                    }

                    break;
                default:
                    typed[name] = map[field.Key];
                    break;
            }
        }
    }
}
