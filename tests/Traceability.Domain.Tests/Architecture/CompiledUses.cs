using System.Reflection;
using System.Reflection.Emit;

namespace Traceability.Domain.Tests.Architecture;

/// <summary>
/// What compiled types use: in base types, fields, signatures, local variables and every instruction of their method bodies. What the
/// compiler made of a lambda or an iterator counts for the type in which it is written. Constants are gone by then: see
/// <see cref="WrittenUses"/>.
/// </summary>
internal static class CompiledUses
{
    private const BindingFlags Everything =
        BindingFlags.DeclaredOnly | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static;

    private static readonly Dictionary<int, OpCode> ByValue = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(f => (OpCode)f.GetValue(null)!)
        .ToDictionary(o => (int)(ushort)o.Value);

    /// <summary>Every use between two namespaces below the root.</summary>
    public static IEnumerable<Use> Of(IEnumerable<Type> types, string root) =>
        from type in types
        where NamespaceIn(root, type) is not null
        let user = Outermost(type)
        from used in UsedBy(type).SelectMany(Parts).Select(Outermost).Distinct()
        where NamespaceIn(root, used) is { } to && to != NamespaceIn(root, type)
        select new Use(user.Name, NamespaceIn(root, type)!, used.Name, NamespaceIn(root, used)!);

    /// <summary>True when the body of the method reads that field.</summary>
    public static bool Reads(MethodBase method, FieldInfo field) =>
        method.GetMethodBody() is { } body
        && !method.ContainsGenericParameters
        && Tokens(body.GetILAsByteArray()!)
            .Any(token => (token >> 24) is 0x04 or 0x0A && method.Module.ResolveMember(token) == (MemberInfo)field);

    private static string? NamespaceIn(string root, Type type) =>
        Outermost(type).Namespace is { } name && name.StartsWith(root + ".", StringComparison.Ordinal) ? name[(root.Length + 1)..] : null;

    private static Type Outermost(Type type) => type.DeclaringType is { } around ? Outermost(around) : type;

    private static IEnumerable<Type> Parts(Type type) =>
        type.HasElementType ? Parts(type.GetElementType()!)
        : type.IsGenericParameter ? type.GetGenericParameterConstraints().Where(c => !c.ContainsGenericParameters).SelectMany(Parts)
        : type.IsGenericType ? type.GetGenericArguments().Where(a => !a.IsGenericParameter).SelectMany(Parts).Append(type)
        : [type];

    private static IEnumerable<Type> UsedBy(Type type) =>
        [
            .. type.BaseType is { } parent ? [parent] : Type.EmptyTypes,
            .. type.GetInterfaces(),
            .. type.GetGenericArguments(),
            .. type.GetCustomAttributesData().Select(a => a.AttributeType),
            .. type.GetFields(Everything).Select(f => f.FieldType),
            .. type.GetMethods(Everything).SelectMany(m => BodyOf(m).Append(m.ReturnType).Concat(m.GetGenericArguments())),
            .. type.GetConstructors(Everything).SelectMany(BodyOf),
        ];

    private static IEnumerable<Type> BodyOf(MethodBase method)
    {
        var parameters = method.GetParameters().Select(p => p.ParameterType);
        return method.GetMethodBody() is not { } body
            ? parameters
            : parameters
                .Concat(body.LocalVariables.Select(v => v.LocalType))
                .Concat(body.ExceptionHandlingClauses.Where(c => c.Flags == 0).Select(c => c.CatchType!))
                .Concat(Tokens(body.GetILAsByteArray()!).SelectMany(token => Named(method, token)));
    }

    private static IEnumerable<Type> Named(MethodBase method, int token)
    {
        var ofType = method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : null;
        var ofMethod = method.IsGenericMethod ? method.GetGenericArguments() : null;
        return method.Module.ResolveMember(token, ofType, ofMethod) switch
        {
            Type type => [type],
            FieldInfo field => [field.DeclaringType!, field.FieldType],
            MethodInfo called => [called.DeclaringType!, called.ReturnType, .. called.GetGenericArguments()],
            ConstructorInfo called => [called.DeclaringType!],
            _ => [],
        };
    }

    private static IEnumerable<int> Tokens(byte[] il)
    {
        for (var at = 0; at < il.Length; )
        {
            var code = ByValue[il[at] == 0xFE ? 0xFE00 | il[at + 1] : il[at]];
            at += code.Size;
            if (code.OperandType is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType)
            {
                yield return BitConverter.ToInt32(il, at);
            }

            at += code.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(il, at)),
                _ => 4,
            };
        }
    }
}
